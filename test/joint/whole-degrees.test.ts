import { describe, expect, it } from "vitest";
import { wholeDegreesBelow } from "../../kernel-helpers/joint/whole-degrees.js";
import { degC, degF } from "../../kernel-helpers/quantity/index.js";
import { expectClose } from "../support/expect-close.js";

describe("wholeDegreesBelow(ceiling)", () => {
  it("goes down, never up, on the scale it was written in", () => {
    expect(String(wholeDegreesBelow(degC(224.999)))).toBe("224 °C");
    expect(String(wholeDegreesBelow(degF(435.2)))).toBe("435 °F");
    expect(String(wholeDegreesBelow(degC(-0.2)))).toBe("−1 °C");
  });
  it("leaves a whole degree, also one that a conversion has blurred", () => {
    for (let reading = -40; reading < 600; reading += 7) {
      const blurred = degF(68).plus(degF(reading).minus(degF(68)));
      expectClose(wholeDegreesBelow(blurred).in("degF"), reading, {
        abs: 1e-8,
        because: "degrees from kelvins, sixteen digits",
      });
    }
  });
});
