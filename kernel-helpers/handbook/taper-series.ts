import type { StandardTaper } from "./standard-taper.js";

const inchSeries = "whole fractions of an inch per foot: common practice, no source";
const ratioSeries = "ISO 1119, series of conical tapers (from memory)";

/** Tapers named by inches of diameter per foot of length, the exact value by their name. */
export const perFootTapers: readonly StandardTaper[] = Object.freeze([
  perFoot("1/8", 1 / 8, inchSeries),
  perFoot("1/4", 1 / 4, "inch taper pins, ASME B18.8.2 (from memory)"),
  perFoot("1/2", 1 / 2, inchSeries),
  perFoot("5/8", 5 / 8, inchSeries),
  perFoot("3/4", 3 / 4, "taper pipe thread, ASME B1.20.1 (from memory)"),
  perFoot("1", 1, inchSeries),
  perFoot("1 1/4", 5 / 4, inchSeries),
  perFoot("1 1/2", 3 / 2, inchSeries),
]);

/** Tapers named by their ratio, 1 on diameter in x of length. */
export const ratioTapers: readonly StandardTaper[] = Object.freeze([
  ratio("1:50", 1 / 50, "metric taper pins, ISO 2339 (from memory)"),
  ratio("1:30", 1 / 30, ratioSeries),
  ratio("1:20", 1 / 20, "metric taper shanks, ISO 296 (from memory)"),
  ratio("1:16", 1 / 16, "taper pipe thread, ISO 7-1 (from memory)"),
  ratio("1:12", 1 / 12, ratioSeries),
  ratio("1:10", 1 / 10, ratioSeries),
  ratio("1:8", 1 / 8, ratioSeries),
  ratio("1:5", 1 / 5, ratioSeries),
  ratio("7:24", 7 / 24, "milling spindle noses, ISO 7388 / ASME B5.50 (from memory)"),
]);

function perFoot(inches: string, value: number, source: string): StandardTaper {
  return bare(`${inches} in per foot`, "per foot", value / 12, source);
}

function ratio(name: string, taper: number, source: string): StandardTaper {
  return bare(name, "ratio", taper, source);
}

function bare(name: string, family: StandardTaper["family"], taper: number, source: string): StandardTaper {
  return Object.freeze({
    name,
    family,
    taper,
    largeEnd: undefined,
    smallEnd: undefined,
    length: undefined,
    source,
  });
}
