const entities: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", $: "&#36;" };

/**
 * Foreign text (a remark, a file's name) for use inside a figure. Plotly takes tags in text for markup and
 * text between dollar signs for formulas; here it stays what it is: text, on lines of bearable length.
 *
 * @param text any text
 * @param lineLength characters after which a line is broken at the next space [-], default 60
 * @param mostLength characters after which the text is cut with "…" [-], default 240
 */
export function plotText(text: string, lineLength: number = 60, mostLength: number = 240): string {
  const oneLine = text.replace(/\p{Cc}+/gu, " ").trim();
  const characters = [...oneLine];
  const cut = characters.length > mostLength ? `${characters.slice(0, mostLength).join("")}…` : oneLine;
  return wrapped(cut, lineLength)
    .map((line) => line.replace(/[&<>$]/g, (character) => entities[character]!))
    .join("<br>");
}

function wrapped(text: string, lineLength: number): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/\s+/)) {
    if (line !== "" && line.length + 1 + word.length > lineLength) {
      lines.push(line);
      line = word;
    } else line = line === "" ? word : `${line} ${word}`;
  }
  return [...lines, line];
}
