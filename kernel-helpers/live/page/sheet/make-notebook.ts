import type { IInputPrompt } from "@jupyterlab/cells";
import type { INotebookContent } from "@jupyterlab/nbformat";
import { Notebook, NotebookModel, StaticNotebook } from "@jupyterlab/notebook";
import type { IOutputPrompt } from "@jupyterlab/outputarea";
import { CellMargin, ResultMargin } from "./cell-margin.js";
import type { Languages } from "./languages.js";
import { makeRenderers } from "./render-outputs.js";

class CellParts extends Notebook.ContentFactory {
  override createInputPrompt(): IInputPrompt {
    return new CellMargin();
  }

  override createOutputPrompt(): IOutputPrompt {
    return new ResultMargin();
  }
}

/** The editable notebook of a sheet, from JupyterLab's components. */
export function makeNotebook(languages: Languages, content: INotebookContent): Notebook {
  const writing = { lineNumbers: false, lineWrap: true, matchBrackets: true, indentUnit: "2", tabSize: 2 };
  const notebook = new Notebook({
    rendermime: makeRenderers(languages.markdown),
    contentFactory: new CellParts({ editorFactory: languages.newEditor }),
    mimeTypeService: languages.mimeTypes,
    editorConfig: {
      code: { ...StaticNotebook.defaultEditorConfig.code, ...writing, autoClosingBrackets: true },
      markdown: { ...StaticNotebook.defaultEditorConfig.markdown, ...writing },
      raw: { ...StaticNotebook.defaultEditorConfig.raw, ...writing },
    },
    notebookConfig: {
      ...StaticNotebook.defaultNotebookConfig,
      windowingMode: "none",
      scrollPastEnd: false,
      showMinimap: false,
    },
  });
  notebook.model = makeModel(content);
  return notebook;
}

export function makeModel(content: INotebookContent): NotebookModel {
  const model = new NotebookModel({ defaultCell: "code" });
  model.fromJSON(content);
  model.sharedModel.clearUndoHistory();
  return model;
}
