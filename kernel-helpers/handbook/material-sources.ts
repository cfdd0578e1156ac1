// Where the figures of the material tables stand. "Read" means a public copy of the table was read.
const callister = "W. D. Callister, Materials Science and Engineering, appendix B";

type SourceName =
  | "density"
  | "modulus"
  | "poisson"
  | "strength"
  | "expansion"
  | "conductivity"
  | "specificHeat"
  | "shigleyIrons"
  | "shigleyConstants"
  | "astmA48"
  | "astmB505"
  | "astmB23"
  | "sheet"
  | "practice"
  | "memory";

export const sources: Readonly<Record<SourceName, string>> = Object.freeze({
  density: `${callister}, table B.1`,
  modulus: `${callister}, table B.2 (read)`,
  poisson: `${callister}, table B.3 (from memory)`,
  strength: `${callister}, table B.4 (read)`,
  expansion: `${callister}, table B.6 (read)`,
  conductivity: `${callister}, table B.7 (from memory)`,
  specificHeat: `${callister}, table B.8 (from memory)`,
  shigleyIrons:
    "Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-24, typical properties of grey cast iron (from memory; class 20 read)",
  shigleyConstants:
    "Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-5, physical constants (from memory)",
  astmA48: "ASTM A48, the class is the least tensile strength of its test bar in ksi (read)",
  astmB505: "ASTM B505 / Copper Development Association data sheet (from memory)",
  astmB23:
    "ASTM B23, appendix of informative values (yield at 0.125 % and solidus read in a public reprint; density from memory)",
  sheet: "public material sheet, two figures",
  practice: "common practice, no source",
  memory: "handbook value, from memory",
});
