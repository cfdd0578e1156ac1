// What has come in: what it weighs, how it is lifted, what is stored in it, in which order it comes apart.
export { massesOf } from "./masses.js";
export type { Masses, MomentOfInertia, PartMass, PieceMass } from "./masses-types.js";
export { partMass } from "./part-mass.js";
export {
  type SolidFigures,
  type SolidForm,
  type SolidShape,
  type SolidSize,
  solidFigures,
  solidForms,
} from "./solid.js";
