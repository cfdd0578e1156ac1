import type { ReportInput } from "../../../kernel-helpers/notebook/report/index.js";
import { blocksMimeType } from "../../../kernel-helpers/view/blocks.js";
import { codeCell, dataOutput, markdownCell, notebookOf, presentationOutput, table } from "./sample-input.js";

/**
 * Pieces of HTML that run a script or fetch from an address as soon as a page holds them, and some that wait
 * for a click. A script that ran leaves its mark: `data-ran` on the document.
 */
export function hostileHtml(address: string): readonly string[] {
  const run = "document.documentElement.setAttribute(&quot;data-ran&quot;,1)";
  return [
    `<script>document.documentElement.setAttribute("data-ran",1);fetch("${address}/script-fetch")</script>`,
    `<script src="${address}/script.js"></script>`,
    `<img src="x" onerror="${run}">`,
    `<img src="${address}/picture.png">`,
    `<svg onload="${run}"><script>document.documentElement.setAttribute("data-ran",1)</script></svg>`,
    `<svg><image href="${address}/svg-image.png"></image><use href="${address}/use.svg#a"></use></svg>`,
    `<iframe src="${address}/frame"></iframe><iframe srcdoc="<script>parent.document.documentElement.setAttribute('data-ran',1)</script>"></iframe>`,
    `<object data="${address}/object"></object><embed src="${address}/embed">`,
    `<link rel="stylesheet" href="${address}/sheet.css"><style>@import "${address}/import.css";</style>`,
    `<style>body{background:url(${address}/style.png)}</style>`,
    `<div style="background:url(${address}/background.png);position:fixed;inset:0">cover</div>`,
    `<video src="${address}/video" poster="${address}/poster.png" autoplay></video>`,
    `<form action="${address}/form"><button formaction="${address}/button">send</button></form>`,
    `<base href="${address}/base/">`,
    `<a href="javascript:${run}">click</a><a href="&#106;avascript:${run}">click</a><a href="data:text/html,<script>1</script>">click</a>`,
    `<details open ontoggle="${run}"><summary>more</summary></details>`,
    `<input autofocus onfocus="${run}"><marquee onstart="${run}">m</marquee>`,
    `<math><mtext><table><mglyph><style><!--</style><img title="--&gt;&lt;img src=1 onerror=${run}&gt;">`,
    `<noscript><p title="</noscript><img src=x onerror=${run}>"></noscript>`,
    `<meta http-equiv="refresh" content="1;url=${address}/refresh">`,
  ];
}

/** A rebuild by somebody who means harm, in every place that takes a text. */
export function hostileInput(address: string): ReportInput {
  const pieces = hostileHtml(address);
  const all = pieces.join("\n");
  const breakOut = `"></script></style></title>-->${all}`;
  return {
    title: breakOut,
    facts: [{ label: breakOut, value: breakOut }],
    invented: true,
    notices: [breakOut],
    sheets: [
      {
        name: breakOut,
        title: breakOut,
        status: "failed",
        failure: breakOut,
        notebook: notebookOf([
          markdownCell(all),
          markdownCell(hostileMarkdown(address), { "a.svg": { "text/html": all, "image/svg+xml": all } }),
          codeCell(breakOut, [
            ...pieces.map((piece) => dataOutput({ "text/html": piece, "text/plain": piece })),
            dataOutput({ "text/html": breakOut }),
            dataOutput({ "image/svg+xml": `<svg xmlns="http://www.w3.org/2000/svg">${all}</svg>` }),
            dataOutput({
              "image/png": `"><script>document.documentElement.setAttribute("data-ran",1)</script>`,
            }),
            dataOutput({ "text/markdown": all }),
            dataOutput({
              "text/latex": `\\href{javascript:alert(1)}{x}\\includegraphics{${address}/tex.png}`,
            }),
            dataOutput({ "application/json": { [breakOut]: breakOut } }),
            dataOutput({ [breakOut]: breakOut }),
            dataOutput({ "application/javascript": `document.documentElement.setAttribute("data-ran",1)` }),
            {
              output_type: "stream",
              name: "stdout",
              text: `\u001b[31m${breakOut}\u001b]8;;${address}/link\u0007`,
            },
            { output_type: "error", ename: breakOut, evalue: breakOut, traceback: [breakOut] },
            ...hostilePresentations(address, breakOut).map(presentationOutput),
            dataOutput({ [blocksMimeType]: JSON.stringify({ title: breakOut, blocks: [] }) }),
          ]),
        ]),
      },
    ],
    tables: [
      table(
        breakOut,
        `# ${breakOut.replaceAll("\n", " ")}\n"${breakOut.replaceAll('"', '""')}"\n"${all.replaceAll('"', '""')}"\n`,
      ),
      table("open", `a\n"${all}`),
    ],
    records: [{ name: breakOut, text: breakOut }],
    provenance: [{ label: breakOut, value: breakOut }],
  };
}

function hostileMarkdown(address: string): string {
  return [
    "[click](javascript:alert(1)) [click](data:text/html;base64,AAAA) [click](//example.org/x)",
    `![picture](${address}/markdown.png) ![picture](attachment:a.svg) ![picture](attachment:__proto__)`,
    `![x" onerror="document.documentElement.setAttribute('data-ran',1)](${address}/alt.png "t\\" onload=x")`,
    `<${address}/auto> and $\\href{javascript:alert(1)}{x}$ and $\\htmlData{x=y}{z}$`,
    "```\"><script>document.documentElement.setAttribute('data-ran',1)</script>\n</code></pre><script>1</script>\n```",
  ].join("\n\n");
}

/** Well-formed but hostile first, then wrong in shape. */
function hostilePresentations(address: string, text: string): readonly unknown[] {
  const figure = {
    data: [{ type: "scatter", x: [1, 2], y: [1, 2], name: text, text, hovertemplate: text }],
    layout: {
      width: 400,
      height: 300,
      title: { text: `<img src=x onerror=1><a href="javascript:alert(1)">t</a>${text}` },
      modebar: { add: ["sendChartToCloud"] },
    },
  };
  const source = `${address}/layout-image.png`;
  const images = [{ source, xref: "paper", yref: "paper", sizex: 1, sizey: 1 }];
  const withPicture = { ...figure, layout: { ...figure.layout, images } };
  return [
    {
      title: text,
      blocks: [
        { type: "text", text },
        { type: "warning", text },
        { type: "facts", facts: [{ label: text, value: text, note: text }] },
        {
          type: "table",
          caption: text,
          columns: [{ title: text, unit: text, align: "left" }],
          rows: [{ cells: [text], mark: "bad" }],
        },
        { type: "verdict", outcome: "no", text, because: text },
        { type: "caution", title: text, points: [text] },
        { type: "figure", figure, alt: text, caption: text },
        { type: "figure", figure: { ...figure, data: [{ type: text }] }, alt: text },
        { type: "figure", figure: withPicture, alt: text },
      ],
    },
    JSON.parse(
      `{"title":"t","blocks":[{"type":"figure","alt":"a","figure":{"data":[{"__proto__":{"polluted":1}}],"layout":{"constructor":{"prototype":{"polluted":1}}}}}]}`,
    ),
    { title: { toString: "x" }, blocks: [] },
    { title: "t", blocks: [{ type: "text", text: [text] }] },
    { title: "t", blocks: [{ type: "table", columns: [{ title: "a", align: text }], rows: [] }] },
    null,
  ];
}
