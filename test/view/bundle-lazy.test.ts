import { expect, it, vi } from "vitest";
import { bundleOf } from "../../kernel-helpers/view/bundle.js";
import { heatFigure } from "./typical-figure.js";

// Each stands for a heavy library and fails when it is loaded.
vi.mock("happy-dom", () => {
  throw new Error("happy-dom was loaded");
});
vi.mock("../../kernel-helpers/view/picture/load-resvg.js", () => {
  throw new Error("resvg was loaded");
});

it("bundleOf(value) loads the drawing engine for a figure only", async () => {
  const title = "Shaft";
  const text = { title, blocks: [{ type: "text", text: "Worn." }] };
  expect((await bundleOf(text))!.data).toHaveProperty("text/html");
  const drawn = { title, blocks: [{ type: "figure", figure: heatFigure, alt: "" }] };
  // The second half shows that the first would have noticed.
  await expect(bundleOf(drawn)).rejects.toMatchObject({ cause: { message: "happy-dom was loaded" } });
});
