/** What a simple body has before its density is known; sizes in metres. */
export interface SolidFigures {
  /** [m³] */
  readonly volume: number;
  /** Centre of mass along the axis, from the near end [m]. */
  readonly centre: number;
  /** Moment of inertia about the axis over the density, ∫r² dV [m⁵]. */
  readonly polar: number;
}

/** The shapes a part is put together from. */
export type SolidShape = "cylinder" | "ring" | "cone" | "arm" | "box";

/** A size of a shape, as the columns of a table of pieces are called. */
export type SolidSize = "across" | "far" | "inside" | "length" | "thick";

/** Which sizes a shape has; `optional` ones count as 0 where they are not given. */
export interface SolidForm {
  readonly sizes: readonly SolidSize[];
  readonly optional: readonly SolidSize[];
  /** What the sizes are, in words. */
  readonly words: string;
}

/** The sizes each shape is made of. All diameters, no radii. */
export const solidForms: Readonly<Record<SolidShape, SolidForm>> = Object.freeze({
  cylinder: {
    sizes: ["across", "length"],
    optional: ["inside"],
    words: "across: its diameter; inside: of a bore; length: along the axis",
  },
  ring: {
    sizes: ["across", "inside", "length"],
    optional: [],
    words: "across: outside diameter; inside: inside diameter; length: along the axis",
  },
  cone: {
    sizes: ["across", "far", "length"],
    optional: ["inside"],
    words: "across and far: diameters at near and far end; inside: of a bore; length: along the axis",
  },
  arm: {
    sizes: ["across", "thick", "inside", "far"],
    optional: [],
    words:
      "across and thick: the axes of its oval, round the wheel and along the axis; inside and far: the diameters between which it stands",
  },
  box: {
    sizes: ["across", "thick", "length"],
    optional: [],
    words: "across and thick: its sides, the axis through its middle; length: along the axis",
  },
});

/**
 * Volume, centre and polar second moment of a simple body about its axis, by closed forms.
 *
 * - cylinder, ring: V = π/4·(D² − d²)·L, centre L/2, ∫r² dV = V·(D² + d²)/8
 * - cone (frustum): V = π/12·L·(D² + D·F + F²), centre L/4·(D² + 2DF + 3F²)/(D² + DF + F²),
 *   ∫r² dV = π/160·L·(D⁴ + D³F + D²F² + DF³ + F⁴); a bore is taken off as a cylinder
 * - arm, of oval section a × b, standing out from radius r to R: V = π/4·a·b·(R − r), centre b/2,
 *   ∫r² dV = V·((r² + rR + R²)/3 + a²/16)
 * - box about an axis through its middle: V = a·b·L, centre L/2, ∫r² dV = V·(a² + b²)/12
 *
 * Valid when: the body is sharp-edged. Fillets, bosses and draught of a casting are not in it.
 *
 * @param shape  of the body
 * @param sizes  DIAMETERS and lengths, as `solidForms` tells [m], above 0 (a bore may be 0)
 * @returns volume [m³], centre from the near end [m], ∫r² dV [m⁵]
 * @throws RangeError  a size is missing or not above 0, or an inside is not smaller than what it lies in
 * @example solidFigures("ring", { across: 2, inside: 1, length: 1 }).volume // 2.356194
 * @source F. P. Beer & E. R. Johnston, Vector Mechanics for Engineers, tables of centroids of volumes and mass moments
 * of inertia (from memory); the frustum by integration of discs
 */
export function solidFigures(
  shape: SolidShape,
  sizes: Readonly<Partial<Record<SolidSize, number>>>,
): SolidFigures {
  const form = solidForms[shape];
  for (const name of form.sizes)
    if (!((sizes[name] ?? 0) > 0))
      throw new RangeError(
        `solidFigures: a ${shape} needs ${name}, above 0, got ${sizes[name] ?? "none"} (${form.words})`,
      );
  const { across = 0, far = 0, inside = 0, length = 0, thick = 0 } = sizes;
  const [outer, what] =
    shape === "arm"
      ? [far, "far"]
      : shape === "cone"
        ? [Math.min(across, far), "either end"]
        : [across, "across"];
  if (shape !== "box" && !(inside >= 0 && inside < outer))
    throw new RangeError(
      `solidFigures: the inside of this ${shape} must be smaller than ${what} (${outer} m), got ${inside} m`,
    );
  switch (shape) {
    case "cylinder":
    case "ring":
      return tube(across, inside, length);
    case "cone":
      return less(frustum(across, far, length), tube(inside, 0, length));
    case "arm": {
      const volume = (Math.PI / 4) * across * thick * ((far - inside) / 2);
      const [r, big] = [inside / 2, far / 2];
      return {
        volume,
        centre: thick / 2,
        polar: volume * ((r * r + r * big + big * big) / 3 + (across * across) / 16),
      };
    }
    case "box": {
      const volume = across * thick * length;
      return { volume, centre: length / 2, polar: (volume * (across * across + thick * thick)) / 12 };
    }
  }
}

function tube(outside: number, inside: number, length: number): SolidFigures {
  const volume = (Math.PI / 4) * (outside ** 2 - inside ** 2) * length;
  return { volume, centre: length / 2, polar: (volume * (outside ** 2 + inside ** 2)) / 8 };
}

function frustum(near: number, far: number, length: number): SolidFigures {
  const squares = near ** 2 + near * far + far ** 2;
  return {
    volume: (Math.PI / 12) * length * squares,
    centre: ((length / 4) * (near ** 2 + 2 * near * far + 3 * far ** 2)) / squares,
    polar:
      (Math.PI / 160) *
      length *
      (near ** 4 + near ** 3 * far + near ** 2 * far ** 2 + near * far ** 3 + far ** 4),
  };
}

function less(whole: SolidFigures, hole: SolidFigures): SolidFigures {
  const volume = whole.volume - hole.volume;
  return {
    volume,
    centre: (whole.volume * whole.centre - hole.volume * hole.centre) / volume,
    polar: whole.polar - hole.polar,
  };
}
