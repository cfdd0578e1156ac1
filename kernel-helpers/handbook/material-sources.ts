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
  | "ironHeat"
  | "shigleyIrons"
  | "shigleyConstants"
  | "astmA48"
  | "bronzeSheet"
  | "bronzeSand"
  | "astmB23"
  | "sheet"
  | "practice"
  | "memory";

export const sources: Readonly<Record<SourceName, string>> = Object.freeze({
  density: `${callister}, table B.1 (read)`,
  modulus: `${callister}, table B.2 (read)`,
  poisson: `${callister}, table B.3 (from memory; a public table gives grey iron 0.211, ductile iron 0.26 to 0.31, mild steel 0.303)`,
  strength: `${callister}, table B.4 (read)`,
  expansion: `${callister}, table B.6 (read)`,
  conductivity: `${callister}, table B.7 (from memory; agrees with public material sheets, read)`,
  specificHeat: `${callister}, table B.8 (from memory; a public table gives carbon steel 490)`,
  ironHeat: `rises with heat: public material sheets give 450 to 490 near room temperature (read), ${callister}, table B.8, 544 (from memory)`,
  shigleyIrons:
    "Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-24, typical properties of grey cast iron (classes 20, 30 and 60 read in public copies of the figures, moduli of class 40 too; the others from memory)",
  shigleyConstants:
    "Shigley & Nisbett, Mechanical Engineering Design, 9th edition, table A-5, physical constants (read in a public solution that copies it)",
  astmA48: "ASTM A48, the class is the least tensile strength of its test bar in ksi (read)",
  bronzeSheet: "Copper Development Association data, as public alloy sheets print them (read)",
  bronzeSand: "least of sand castings, as a public foundry's table of ASTM B584 and B148 prints them (read)",
  astmB23:
    "ASTM B23, appendix of informative values (yield at 0.125 % and solidus read in a public reprint; density from memory, 7.3 for alloy 2 read in a public sheet)",
  sheet: "public material sheet, two figures",
  practice: "common practice, no source",
  memory: "handbook value, from memory",
});
