import type { CodeEditor } from "@jupyterlab/codeeditor";
import {
  CodeMirrorEditorFactory,
  CodeMirrorMimeTypeService,
  EditorExtensionRegistry,
  EditorLanguageRegistry,
  EditorThemeRegistry,
  ybinding,
} from "@jupyterlab/codemirror";
import { createMarkdownParser } from "@jupyterlab/markedparser-extension";
import type { IRenderMime } from "@jupyterlab/rendermime";

/** The shared text behind an editor, as JupyterLab's model has it. */
interface CellText {
  readonly ysource: Parameters<typeof ybinding>[0]["ytext"];
  readonly undoManager: Parameters<typeof ybinding>[0]["undoManager"] | null;
}

/** The languages a worksheet has: its cells, and what code in its texts may be. */
const shown = ["typescript", "javascript", "json"];

export interface Languages {
  readonly newEditor: CodeEditor.Factory;
  readonly mimeTypes: CodeMirrorMimeTypeService;
  readonly markdown: IRenderMime.IMarkdownParser;
}

/** What editors and texts need to know of languages. */
export function makeLanguages(): Languages {
  const languages = new EditorLanguageRegistry();
  for (const language of EditorLanguageRegistry.getDefaultLanguages())
    if (shown.includes(language.name.toLowerCase())) languages.addLanguage(language);
  languages.addLanguage({
    name: "ipythongfm",
    mime: "text/x-ipythongfm",
    load: async () => (await import("@codemirror/lang-markdown")).markdown(),
  });
  const factory = new CodeMirrorEditorFactory({ extensions: editorExtensions(), languages });
  return {
    newEditor: factory.newInlineEditor,
    mimeTypes: new CodeMirrorMimeTypeService(languages),
    markdown: createMarkdownParser(languages),
  };
}

function editorExtensions(): EditorExtensionRegistry {
  const themes = new EditorThemeRegistry();
  for (const theme of EditorThemeRegistry.getDefaultThemes()) themes.addTheme(theme);
  const extensions = new EditorExtensionRegistry();
  for (const make of EditorExtensionRegistry.getDefaultExtensions({ themes })) extensions.addExtension(make);
  // Binds what is typed to the model of the cell; JupyterLab leaves this one to the application.
  extensions.addExtension({
    name: "text-of-the-cell",
    factory: ({ model }) => {
      const { ysource: ytext, undoManager } = model.sharedModel as unknown as CellText;
      return EditorExtensionRegistry.createImmutableExtension(
        ybinding({ ytext, undoManager: undoManager ?? undefined }),
      );
    },
  });
  return extensions;
}
