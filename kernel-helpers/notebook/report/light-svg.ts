import { stylesOnce } from "./styles-once.js";

/**
 * A picture as plotly.js draws it, without what changes nothing in it: names of classes (there is no style sheet) and of
 * parts, empty groups and paths, clips that clip nothing, digits past a millionth of a pixel, and properties that
 * say what holds anyway and is not handed down; colours written short, and shared styles said once. Attributes stand in
 * single quotes, which need no escape in the page. About half as long in a page, drawn the same to the pixel.
 *
 * Valid when: the picture holds no style sheet.
 */
export function lightSvg(svg: string): string {
  const light = svg.replace(/<[A-Za-z][^>]*>/g, (tag) =>
    tag
      .replace(/ (?:class|data-[\w-]+)="[^"]*"/g, "")
      .replace(/ style="([^"]*)"/g, (_, style: string) => ` style="${lightStyle(style, tag)}"`)
      .replace(/ style=""/g, "")
      .replace(/\d+\.\d{7,}/g, shortNumber)
      .replace(/="([^"']*)"/g, "='$1'"),
  );
  return stylesOnce(withoutEmptyGroups(withoutIdleClips(withoutIdleOpacity(fontOnce(light)))));
}

/** The font's family is said once for the whole picture, where all its texts have the same. */
function fontOnce(svg: string): string {
  const texts = svg.match(/<text[^>]*>/g) ?? [];
  const family = /[';]font-family:([^;']+)/.exec(texts[0] ?? "")?.[1];
  if (family === undefined || !texts.every((text) => text.includes(`font-family:${family}`))) return svg;
  return svg.replaceAll(`font-family:${family};`, "").replace("<svg ", `<svg font-family='${family}' `);
}

/** Opacities are handed down: where every one of a kind in the picture is 1, none of them says anything. */
function withoutIdleOpacity(svg: string): string {
  return ["stroke-opacity", "fill-opacity"].reduce((left, name) => {
    const values = [...left.matchAll(new RegExp(`${name}(?::|=')([^;']*)`, "g"))].map(([, value]) => value);
    return values.some((value) => value !== "1")
      ? left
      : left.replaceAll(new RegExp(`;${name}:1\\b`, "g"), "");
  }, svg);
}

/** plotly.js defines a clip for every pair of axes, and uses some of them. */
function withoutIdleClips(svg: string): string {
  const used = new Set([...svg.matchAll(/url\((?:&quot;|['"])?#([\w-]+)/g)].map(([, id]) => id!));
  return svg.replace(/<clipPath id='([\w-]+)'>.*?<\/clipPath>/gs, (clip, id: string) =>
    used.has(id) ? clip : "",
  );
}

/** What holds nothing but empty groups is one itself; a path without a way draws nothing. */
function withoutEmptyGroups(svg: string): string {
  const fewer = svg.replace(
    /<g(?: (?:clip-path|style)='[^']*')*(?:\/>|><\/g>)|<path(?: style='[^']*')?\/>/g,
    "",
  );
  return fewer === svg ? svg : withoutEmptyGroups(fewer);
}

function lightStyle(style: string, tag: string): string {
  // A style outdoes an attribute of the same name: where there is one, it says something after all.
  const isIdle = (property: string): boolean => {
    const [, name] = /^(opacity|vector-effect): (?:1|none)$/.exec(property) ?? [];
    return name !== undefined && !tag.includes(` ${name}=`);
  };
  return style
    .split(/;\s*/)
    .filter((property) => property !== "" && !isIdle(property))
    .map((property) => property.replace(/rgb\((\d+), (\d+), (\d+)\)/g, hex).replace(": ", ":"))
    .map((property) =>
      property.startsWith("font-family:") ? property.replace(/['"]|&quot;/g, "") : property,
    )
    .join(";");
}

/** 87.71000000000001 is 87.71. */
function shortNumber(digits: string): string {
  return String(Number(Number(digits).toFixed(6)));
}

function hex(_match: string, ...parts: readonly string[]): string {
  const digits = parts.slice(0, 3).map((part) => Number(part).toString(16).padStart(2, "0"));
  return `#${digits.join("")}`;
}
