import type { Browser, Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it, onTestFinished } from "vitest";
import { Bench, bundleGrid, cell, hasChromium, launchChromium } from "./support/grid-page.js";

const survey = "station [in],diameter [in],remark\n1,2.4373,\n2,2.4371,\n";
const diameter = "diameter [in]";

describe.skipIf(!hasChromium())("saving from the table editor", () => {
  let browser: Browser;
  let bundle: Awaited<ReturnType<typeof bundleGrid>>;

  beforeAll(async () => {
    bundle = await bundleGrid();
    browser = await launchChromium();
  });
  afterAll(() => browser.close());

  async function bench(): Promise<Bench> {
    const made = new Bench(browser, bundle, { survey });
    await made.start();
    onTestFinished(async () => {
      await made.stop();
      expect(made.troubles).toEqual([]);
    });
    return made;
  }

  async function typeDiameter(page: Page, row: string, text: string): Promise<void> {
    await cell(page, diameter, row).click();
    await page.keyboard.type(text);
  }

  it("never writes over what somebody else saved: both are shown, and mine can be kept", async () => {
    const made = await bench();
    // Without events the page learns of the change only when it saves.
    const visitor = await made.visitor();
    await visitor.routeWebSocket("**/api/events", () => {});
    const page = await made.open(visitor, "survey");
    await typeDiameter(page, "line 2", "2.5");
    const theirs = survey.replace("2.4371", "2.6");
    made.write("survey", theirs);
    await page.keyboard.press("Control+s");
    const dialog = page.getByRole("dialog", { name: "Two texts of this table" });
    await dialog.waitFor();
    expect(made.read("survey")).toBe(theirs);
    expect(await dialog.locator("tr.differs").allInnerTexts()).toEqual([
      "◂ 1,2.5,\t▸ 1,2.4373,",
      "◂ 2,2.4371,\t▸ 2,2.6,",
    ]);
    await dialog.getByRole("button", { name: "Decide later" }).click();
    await page.getByText("not saved: another text stands on disk").waitFor();
    expect(made.read("survey")).toBe(theirs);
    await page.getByRole("button", { name: "Compare and choose" }).click();
    await dialog.getByRole("button", { name: "Keep mine and write it" }).click();
    await page.getByText("saved", { exact: true }).waitFor();
    expect(made.read("survey")).toBe(survey.replace("2.4373", "2.5"));
  });

  it("takes the file's text over, and undo brings mine back", async () => {
    const made = await bench();
    const page = await made.open(await made.visitor(), "survey");
    await typeDiameter(page, "line 2", "2.5");
    await page.keyboard.press("Enter");
    made.write("survey", survey.replace("2.4371", "2.6"));
    await page.getByText("The file was changed by somebody else while you were typing").waitFor();
    await page.getByRole("button", { name: "Compare and choose" }).click();
    await page.getByRole("button", { name: "Take the one on disk" }).click();
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.4373");
    expect(await cell(page, diameter, "line 3").inputValue()).toBe("2.6");
    await page.getByText("saved", { exact: true }).waitFor();
    await page.keyboard.press("Control+z");
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.5");
    await page.keyboard.press("Control+s");
    await page.getByText("saved", { exact: true }).waitFor();
    expect(made.read("survey")).toBe(survey.replace("2.4373", "2.5"));
  });

  it("offers a change on disk where nothing was typed", async () => {
    const made = await bench();
    const page = await made.open(await made.visitor(), "survey");
    made.write("survey", survey.replace("2.4371", "2.6"));
    await page.getByRole("button", { name: "Take over what stands there now" }).click();
    expect(await cell(page, diameter, "line 3").inputValue()).toBe("2.6");
    expect(await page.locator(".notice").count()).toBe(0);
  });

  it("puts back what was typed and not saved, and throws it away on a word", async () => {
    const made = await bench();
    const visitor = await made.visitor();
    const first = await made.open(visitor, "survey");
    await typeDiameter(first, "line 2", "2.5");
    await first.close();
    const page = await made.open(visitor, "survey");
    await page.getByText(/has been put back/).waitFor();
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.5");
    expect(made.read("survey")).toBe(survey);
    await page.getByRole("button", { name: "Throw it away" }).click();
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.4373");
    await page.getByText("saved", { exact: true }).waitFor();
    await page.reload();
    await page.getByText("No faults").waitFor();
    expect(await page.locator(".notice").count()).toBe(0);
  });

  it("lets one choose where the file has changed since the text was typed", async () => {
    const made = await bench();
    const visitor = await made.visitor();
    const first = await made.open(visitor, "survey");
    await typeDiameter(first, "line 2", "2.5");
    await first.close();
    made.write("survey", survey.replace("2.4371", "2.6"));
    const page = await made.open(visitor, "survey");
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.5");
    await page.keyboard.press("Control+s");
    await page.getByRole("dialog", { name: "Two texts of this table" }).waitFor();
    expect(made.read("survey")).toBe(survey.replace("2.4371", "2.6"));
  });

  it("keeps the drafts of two tabs apart", async () => {
    const made = await bench();
    const visitor = await made.visitor();
    const [one, two] = [await made.open(visitor, "survey"), await made.open(visitor, "survey")];
    expect(await one.locator(".notice").count()).toBe(0);
    await typeDiameter(one, "line 2", "2.5");
    await typeDiameter(two, "line 3", "2.6");
    await one.close();
    await two.close();
    const page = await made.open(visitor, "survey");
    await page.getByText(/has been put back/).waitFor();
    expect(await cell(page, diameter, "line 3").inputValue()).toBe("2.6");
    await page.getByText(/Another tab left a text that was not saved/).waitFor();
    await page.getByRole("button", { name: "Put it in place of this one" }).click();
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.5");
    expect(await cell(page, diameter, "line 3").inputValue()).toBe("2.4371");
  });

  it("keeps what was typed over a reload of its tab", async () => {
    const made = await bench();
    const page = await made.open(await made.visitor(), "survey");
    await typeDiameter(page, "line 2", "2.5");
    await page.reload();
    await page.getByText(/has been put back/).waitFor();
    expect(await cell(page, diameter, "line 2").inputValue()).toBe("2.5");
  });

  it("goes on while the server is away, and saves when it is back", async () => {
    const made = await bench();
    const visitor = await made.visitor();
    const page = await made.open(visitor, "survey");
    const { port } = made.server!.access;
    await made.stop();
    await page.getByText(/The server is away/).waitFor();
    await typeDiameter(page, "line 2", "2.5");
    await page.keyboard.press("Control+s");
    await page.getByText("will be saved when the server is back").waitFor();
    await page.keyboard.press("ArrowDown");
    await page.keyboard.type("2.6");
    await made.start(port);
    await page.getByText(/does not know this page/).waitFor();
    expect(made.read("survey")).toBe(survey);
    await made.letIn(visitor);
    await page.getByText("saved", { exact: true }).waitFor();
    expect(made.read("survey")).toBe(survey.replace("2.4373", "2.5").replace("2.4371", "2.6"));
    expect(await page.locator(".notice.warn").count()).toBe(0);
  });

  it("saves a table with faults", async () => {
    const made = await bench();
    const page = await made.open(await made.visitor(), "survey");
    await typeDiameter(page, "line 2", "2.5O3");
    await page.getByRole("button", { name: "Save" }).click();
    await page.getByText("saved", { exact: true }).waitFor();
    expect(made.read("survey")).toBe(survey.replace("2.4373", "2.5O3"));
  });

  it("says which worksheets became stale, lets them run, and says how it went", async () => {
    const made = await bench();
    const visitor = await made.visitor();
    let states = ["fresh", "stale"];
    await visitor.route("**/api/rebuild", (route) =>
      route.fulfill({
        json: {
          title: "Line shaft",
          unitSystem: "inch",
          sheets: [
            { name: "04-shaft-survey", title: "Shaft survey", state: states[0], why: "" },
            { name: "05-taper", title: "Taper", state: states[1], why: "" },
          ],
        },
      }),
    );
    const asked: unknown[] = [];
    await visitor.route("**/api/run", (route) => {
      asked.push(route.request().postDataJSON());
      return route.fulfill({ status: 202, json: {} });
    });
    let tell = (_event: object): void => {};
    await visitor.routeWebSocket("**/api/events", (socket) => {
      tell = (event) => socket.send(JSON.stringify(event));
    });
    const page = await made.open(visitor, "survey");
    expect(await page.locator(".notice").count()).toBe(0);
    await typeDiameter(page, "line 2", "2.5");
    states = ["stale", "stale"];
    await page.keyboard.press("Control+s");
    await page.getByText("Saved. These worksheets are now stale:").waitFor();
    const links = page.locator(".notice a");
    expect(await links.allInnerTexts()).toEqual(["Shaft survey", "Taper"]);
    expect(await links.first().getAttribute("href")).toBe("/sheet/04-shaft-survey");
    await page.getByRole("button", { name: "Run all 2" }).click();
    await page.getByText("The run begins …").waitFor();
    expect(asked).toEqual([{ sheets: ["04-shaft-survey", "05-taper"] }]);
    tell({ type: "progress", stage: "cell-started", sheet: "05-taper", index: 2, cells: 9 });
    await page.getByText("Running Taper, cell 3 of 9 …").waitFor();
    states = ["fresh", "failed"];
    tell({ type: "run-ended", failed: ["05-taper"], report: false });
    await page.getByText("The run is done; not all went well.").waitFor();
    expect(await links.allInnerTexts()).toEqual(["Taper"]);
  });
});
