import { filmPressure } from "./film-pressure.js";

/** A film that begins late, because too little oil comes to it; dimensionless. */
export interface StarvedFilm {
  readonly eccentricity: number;
  /** From the load on to the thinnest film, in the direction of rotation [rad]. */
  readonly attitude: number;
  /** From the load on to where the film begins, in the direction of rotation; below 0 before it [rad]. */
  readonly begins: number;
  /** Mean pressure W/(LD) over the highest [-]. */
  readonly meanOverHighest: number;
  /** f·R/c: at least, where the rest of the ring carries only what the film has let through; at most, all of it sheared. */
  readonly friction: { readonly least: number; readonly most: number };
}

/** All starved films of one length over diameter. */
export interface StarvedFilms {
  readonly lengthOverDiameter: number;
  /** By growing eccentricity, each by a later and later beginning. */
  readonly rows: readonly (readonly Found[])[];
}

interface Found extends StarvedFilm {
  readonly sommerfeld: number;
  /** Q/(R·c·N·L) at both ends together [-]. */
  readonly side: number;
}

/** With mesh and beginnings close enough that a film found errs by less than 3 % in load and 8 % in flow. */
const eccentricities: readonly number[] = [
  0.02,
  0.035,
  ...Array.from({ length: 34 }, (_, i) => 0.05 + 0.025 * i),
  0.89,
  0.905,
  0.92,
  0.935,
  0.95,
  0.96,
  0.97,
  0.98,
];
/** Where films begin, as shares of half a turn from the thickest to the thinnest: closer towards the end. */
const beginnings: readonly number[] = Array.from({ length: 30 }, (_, i) => 1 - (1 - i / 30) ** 1.6);
const mesh = { around: 72, along: 16 };
/**
 * How far an end is felt in a film, as a share of (π − θₛ), of the radius: twice its width, beyond which pressure dies away by
 * e^−π a width.
 */
const felt = 2;

/**
 * Films that begin late, of one length over diameter, to read between.
 *
 * In one piece from θₛ to as far behind the thinnest film as θₛ lies before it, by `filmPressure`; Sommerfeld number,
 * attitude and side flow as `filmState`. Where the film is short round the journal to its length, both ends are solved and
 * the middle of them stands for the rest. Friction = (ε/2) sin φ + πS·∫w/H dθ over the ring: in the film w = 1; beside it
 * w = 1 at most, Hₑ/H at least, Hₑ where the film tears.
 *
 * @param lengthOverDiameter  0.02 to 10 [-]
 * @returns the films
 * @throws RangeError  a value out of its range
 * @source H. J. Connors, ASLE Transactions 5, 1962 (a journal bearing by its rate of supply); I. Etsion & O. Pinkus, Journal
 * of Lubrication Technology 97, 1975 (incomplete films) (from memory)
 */
export function starvedFilms(lengthOverDiameter: number): StarvedFilms {
  if (!(lengthOverDiameter >= 0.02 && lengthOverDiameter <= 10))
    throw new RangeError(
      `starvedFilms: length over diameter must lie between 0.02 and 10, got ${lengthOverDiameter}`,
    );
  const rows = eccentricities.map((eccentricity) =>
    Object.freeze(beginnings.map((share) => filmFrom(eccentricity, share * Math.PI, lengthOverDiameter))),
  );
  return Object.freeze({ lengthOverDiameter, rows: Object.freeze(rows) });
}

/** The film that begins at θₛ from the thickest. */
function filmFrom(eccentricity: number, from: number, lengthOverDiameter: number): Found {
  const to = 2 * Math.PI - from;
  const solved = Math.min(lengthOverDiameter, felt * (Math.PI - from));
  const rest = lengthOverDiameter - solved;
  const { pressure, leak, highest, ...ends } = filmPressure(eccentricity, 1 / solved, { from, to }, mesh);
  const step = (to - from) / (mesh.around + 1);
  /** ∫∫ over the whole length: of the ends, and of the middle between them. */
  const over = (part: number, of: (theta: number) => number): number => {
    let line = 0;
    for (let i = 0; i < mesh.around; i++)
      line += pressure[i * mesh.along]! * of(from + (i + 1) * step) * step;
    return (part * solved + 2 * line * rest) / lengthOverDiameter;
  };
  const [cosine, sine] = [over(ends.cosine, Math.cos), over(ends.sine, Math.sin)];
  const carried = Math.hypot(cosine, sine);
  const attitude = Math.atan2(sine, -cosine);
  const sommerfeld = 1 / (3 * Math.PI * carried);
  const film = (theta: number): number => 1 + eccentricity * Math.cos(theta);
  let last = mesh.around - 1;
  while (last > 0 && pressure[last * mesh.along] === 0) last--;
  const tears = from + (last + 1) * step;
  const carriedOn = film(tears);
  const pushed = (eccentricity / 2) * Math.sin(attitude);
  const whole = (2 * Math.PI) / Math.sqrt(1 - eccentricity ** 2);
  // ∫dθ/H inside the film, and ∫Hₑ/H² beside it.
  const [inside, beside] = [
    integral((theta) => 1 / film(theta), from, tears),
    integral((theta) => carriedOn / film(theta) ** 2, tears, from + 2 * Math.PI),
  ];
  const sheared = Math.PI * sommerfeld;
  return Object.freeze({
    eccentricity,
    attitude,
    begins: from - Math.PI + attitude,
    meanOverHighest: carried / (4 * highest),
    friction: Object.freeze({
      least: pushed + sheared * Math.min(whole, inside + beside),
      most: pushed + sheared * whole,
    }),
    sommerfeld,
    side: (Math.PI * leak) / (solved * lengthOverDiameter),
  });
}

/** Simpson's rule. */
function integral(of: (x: number) => number, from: number, to: number): number {
  const steps = 120;
  const h = (to - from) / steps;
  let sum = of(from) + of(to);
  for (let i = 1; i < steps; i++) sum += (i % 2 === 1 ? 4 : 2) * of(from + i * h);
  return (sum * h) / 3;
}

/**
 * The film that carries a load and loses at its ends no more than the oil that is brought.
 *
 * At each eccentricity the beginning that gives the Sommerfeld number S, read straight in ln S; of these the one whose side
 * flow is the oil brought, straight in the logarithm of the flow.
 *
 * Valid when: what leaves at the ends does not come back; oil spread along the whole length; no parting line within the
 * film. It is the thinner, the less is brought; and never thicker than a film that begins where it is thickest.
 *
 * @param films  as `starvedFilms` returns them
 * @param sommerfeld  S, > 0 [-]
 * @param brought  Q/(R·c·N·L), > 0 [-]
 * @returns the film; undefined where it would be thinner than 0.02 of the radial clearance
 * @throws RangeError  a value not above 0
 * @example starvedFilm(starvedFilms(1), 0.121, 0.1)!.eccentricity.toFixed(2) // "0.82"
 * @source see `starvedFilms`
 */
export function starvedFilm(
  { rows }: StarvedFilms,
  sommerfeld: number,
  brought: number,
): StarvedFilm | undefined {
  for (const [name, value] of Object.entries({ sommerfeld, brought }))
    if (!(value > 0)) throw new RangeError(`starvedFilm: ${name} must be above 0, got ${value}`);
  const able = [...longest(rows, sommerfeld), ...rows.flatMap((row) => carrying(row, sommerfeld))];
  const [first] = able;
  if (first === undefined) return undefined;
  if (brought >= first.side) return first;
  const next = able.findIndex(({ side }) => side <= brought);
  if (next < 0) return undefined;
  const [a, b] = [able[next - 1]!, able[next]!];
  return between(a, b, Math.log(brought / a.side) / Math.log(b.side / a.side));
}

/** The film that begins where it is thickest, between two eccentricities. */
function longest(rows: StarvedFilms["rows"], sommerfeld: number): Found[] {
  const next = rows.findIndex(([one]) => one!.sommerfeld <= sommerfeld);
  if (next <= 0) return [];
  const [a, b] = [rows[next - 1]![0]!, rows[next]![0]!];
  return [between(a, b, Math.log(sommerfeld / a.sommerfeld) / Math.log(b.sommerfeld / a.sommerfeld))];
}

/** The film of one eccentricity that carries the load; none where even the longest carries less. */
function carrying(row: readonly Found[], sommerfeld: number): Found[] {
  const next = row.findIndex((one) => one.sommerfeld > sommerfeld);
  if (next <= 0) return [];
  const [a, b] = [row[next - 1]!, row[next]!];
  return [between(a, b, Math.log(sommerfeld / a.sommerfeld) / Math.log(b.sommerfeld / a.sommerfeld))];
}

function between(a: Found, b: Found, share: number): Found {
  const straight = (of: (one: Found) => number): number => of(a) + share * (of(b) - of(a));
  const inLogs = (of: (one: Found) => number): number => Math.exp(straight((one) => Math.log(of(one))));
  return Object.freeze({
    eccentricity: straight((one) => one.eccentricity),
    attitude: straight((one) => one.attitude),
    begins: straight((one) => one.begins),
    meanOverHighest: straight((one) => one.meanOverHighest),
    friction: Object.freeze({
      least: inLogs((one) => one.friction.least),
      most: inLogs((one) => one.friction.most),
    }),
    sommerfeld: inLogs((one) => one.sommerfeld),
    side: inLogs((one) => one.side),
  });
}
