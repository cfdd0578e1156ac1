import "./style/main.css";
import { fetchSheetData } from "./api/sheet-data.js";
import { followTheme } from "./dom/dark.js";
import { element } from "./dom/element.js";

/** What the server wrote into the page: which it is, and of what. */
const { page, name = "" } = document.body.dataset;

followTheme();
show().catch((error: unknown) => {
  const text = error instanceof Error ? error.message : String(error);
  document.body.append(
    element("p", { class: "broken", role: "alert" }, `This page cannot be shown: ${text}`),
  );
  console.error(error);
});

async function show(): Promise<void> {
  if (page === "sheet") {
    // The sheet is asked for while the program that shows it is still being read.
    const [{ showSheetPage }, data] = await Promise.all([
      import("./sheet/sheet-page.js"),
      fetchSheetData(name),
    ]);
    await showSheetPage(name, data);
  } else await (await import("./overview/overview-page.js")).showOverviewPage();
}
