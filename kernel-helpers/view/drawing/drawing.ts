/**
 * A line drawing as a workshop makes it: an elevation, a section, a card to take to the bench. Plain JSON data,
 * so that a report can draw it again without trusting anybody's SVG. Places are in pixels from the upper left
 * corner, y downwards; angles in degrees from the right, counter-clockwise as seen.
 */
export interface Drawing {
  /** The least width and height [px]; the picture grows where a shape or a text reaches beyond. */
  readonly width: number;
  readonly height: number;
  /** Drawn in this order, the later over the earlier. */
  readonly shapes: readonly Shape[];
}

/**
 * How a line is drawn: "outline" of a body, "thin" for what only helps, "hidden" edges dashed, "centre" lines in
 * long and short dashes, "force" for forces and movements, "warn" for what must be minded.
 *
 * @source ISO 128-2:2022, types 01.1, 01.2, 02.1 and 04.1 (from memory)
 */
export type Pen = "outline" | "thin" | "hidden" | "centre" | "force" | "warn";

/** How a body is filled; cut metals are hatched, each in its own way, so that they keep apart in a grey print. */
export type Fill = "none" | "metal" | "iron" | "white metal" | "oil" | "shade" | "warn" | "hatch";

/** A place [px]. */
export type Point = readonly [x: number, y: number];

export type Shape =
  | { readonly type: "line"; readonly from: Point; readonly to: Point; readonly pen: Pen }
  | { readonly type: "polyline"; readonly points: readonly Point[]; readonly pen: Pen }
  | { readonly type: "polygon"; readonly points: readonly Point[]; readonly pen: Pen; readonly fill: Fill }
  | {
      readonly type: "circle";
      readonly centre: Point;
      readonly radius: number;
      readonly pen: Pen;
      readonly fill: Fill;
    }
  | {
      /** From one angle to the other: counter-clockwise where `to` is the greater [deg]. */
      readonly type: "arc";
      readonly centre: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
      readonly pen: Pen;
      /** A head at the end `to`. */
      readonly head?: boolean;
    }
  | {
      /** A line with a head at `to`, or at both ends. */
      readonly type: "arrow";
      readonly from: Point;
      readonly to: Point;
      readonly pen: Pen;
      readonly both?: boolean;
    }
  | {
      /** A dimension between two points; its line lies `offset` away, to the right of the way from one to the other. */
      readonly type: "dimension";
      readonly from: Point;
      readonly to: Point;
      readonly offset: number;
      readonly text: string;
    }
  | {
      readonly type: "text";
      /** The base line's start, middle or end, by `anchor`. */
      readonly at: Point;
      readonly text: string;
      readonly size?: TextSize;
      readonly anchor?: "start" | "middle" | "end";
      readonly ink?: "ink" | "pencil" | "force" | "warn";
      /** Turned counter-clockwise about `at` [deg]. */
      readonly turn?: number;
    };

export type TextSize = "small" | "normal" | "large";
