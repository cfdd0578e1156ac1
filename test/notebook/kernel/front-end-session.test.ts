import { describe, expect, it } from "vitest";
import { frontEndSession } from "../../../kernel-helpers/notebook/kernel/front-end-session.js";

describe("frontEndSession(environment, directory)", () => {
  it("takes the sheet's name from the notebook the front end names", () => {
    expect(frontEndSession({ JPY_SESSION_NAME: "/home/me/mill/sheets/05-taper.ipynb" }, "/home/me")).toEqual({
      directory: "/home/me",
      sheet: "05-taper",
    });
  });
  it("knows no sheet where the front end names none, or something else", () => {
    expect(frontEndSession({}, "/home/me")).toEqual({ directory: "/home/me" });
    expect(frontEndSession({ JPY_SESSION_NAME: "console-1" }, "/home/me")).toEqual({ directory: "/home/me" });
  });
});
