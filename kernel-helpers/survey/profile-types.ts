import type { Angle, Length, Measured, UnitSystem } from "../quantity/index.js";

/** One reading of a diameter, corrected to 20 °C, and where it came from. */
export interface DiameterReading {
  readonly station: Length;
  /** Where round the shaft; undefined when the table does not say. */
  readonly angle: Angle | undefined;
  /** The diameter at 20 °C. */
  readonly diameter: Length;
  /** As read, before the correction. */
  readonly asRead: Length;
  /** The standard uncertainty of this reading against its neighbours (repeatability and resolution). */
  readonly standardUncertainty: Length;
  /** The line of the file. */
  readonly line: number;
  /** The column header as written. */
  readonly header: string;
  /** The remark in its row, if any. */
  readonly remark: string;
}

/** All readings at one station. */
export interface ProfileStation {
  readonly station: Length;
  /** Mean over the angles read. */
  readonly mean: Length;
  readonly smallest: Length;
  readonly largest: Length;
  /** Largest minus smallest diameter over the angles (ovality, on diameter); undefined for one angle. */
  readonly ovality: Length | undefined;
  /** Standard uncertainty of the mean against other stations. */
  readonly standardUncertainty: Length;
  /** Indices into the profile's readings. */
  readonly readings: readonly number[];
}

/** Something that moves all readings of a survey alike. */
export interface CommonSource {
  readonly name: string;
  readonly standardUncertainty: Length;
}

/** The diameter along the shaft. */
export interface Profile {
  readonly kind: "profile";
  readonly title: string;
  readonly file: string;
  readonly readings: readonly DiameterReading[];
  /** Sorted along the shaft. */
  readonly stations: readonly ProfileStation[];
  /** The angles read, sorted; empty when the table gives none. */
  readonly angles: readonly Angle[];
  /** Standard uncertainty of a station's position. */
  readonly stationUncertainty: Length;
  /** Standard uncertainty common to all readings: calibration and temperature. It moves all or none. */
  readonly commonUncertainty: Length;
  /** What `commonUncertainty` is made of; undefined where it is known as a whole only. */
  readonly commonSources?: readonly CommonSource[];
  /** What was done to bring readings to 20 °C, in words with its size; or why nothing was. */
  readonly correction: string;
  readonly unitSystem: UnitSystem;
  /** Doubts, each a sentence. */
  readonly warnings: readonly string[];
}

/** The place where one band ends and the next begins: between two stations that were read. */
export interface BandEdge {
  /** The last station of the band before. */
  readonly after: Length;
  /** The first station of the band behind. */
  readonly before: Length;
  /** Midway, with a rectangular standard uncertainty: half the gap / √3 (GUM 4.3.7). */
  readonly position: Measured<Length>;
  /**
   * Probability that an edge lies in this gap, over all numbers of bands [-]; undefined where it was not worked
   * out (see `probabilityNote`). Its prior is that of `bandPosterior`.
   */
  readonly probability?: number | undefined;
  /**
   * The stretch from one station to another that holds this edge with a probability of 95 % or more, given the
   * number of bands found; undefined where it was not worked out.
   */
  readonly interval?: EdgeStretch | undefined;
  /**
   * Where this edge lies with 95 %, given the number of bands found: each gap holds it with its probability, and every
   * place between two stations is as likely as another. Undefined where it was not worked out.
   */
  readonly reach?: EdgeReach | undefined;
}

/** Where an edge lies with 95 %, and as likely below as above. */
export interface EdgeReach {
  readonly low: Length;
  readonly high: Length;
}

/** A stretch between two stations, and the probability that an edge lies in it, given the number of bands. */
export interface EdgeStretch {
  readonly after: Length;
  readonly before: Length;
  /** [-], 0.95 or more */
  readonly probability: number;
}

/** How probable the number of bands found is against other numbers. */
export interface BandCountProbability {
  /** Probability of the number found [-]. */
  readonly found: number;
  /** The most probable other number; undefined where the stations allow no other. */
  readonly runnerUp: { readonly bands: number; readonly probability: number } | undefined;
  /** Probability of 1, 2, 3, … bands [-]. */
  readonly all: readonly number[];
}

/** A stretch of shaft of one shape. */
export interface WearBand {
  /** 1, 2, 3, … along the shaft. */
  readonly number: number;
  readonly shape: "flat" | "sloping";
  /** First and last station read in the band. */
  readonly from: Length;
  readonly to: Length;
  readonly stationCount: number;
  readonly readingCount: number;
  /** Diameter at the middle of the band, at 20 °C; uncertainty within the survey and common, together. */
  readonly diameter: Measured<Length>;
  /** Change of diameter per length along the shaft [-], 0 for a flat band. */
  readonly slope: Measured<number>;
  /** Diameter by the fit at the first and last station. */
  readonly diameterAtFrom: Length;
  readonly diameterAtTo: Length;
  /** Nominal diameter minus diameter, on diameter; undefined without a nominal. */
  readonly depth: Measured<Length> | undefined;
  /** "worn": depth beyond its expanded uncertainty and beyond `wornBeyond`; "as made" otherwise; "over size". */
  readonly state: "as made" | "worn" | "over size" | "not judged";
  /** Smallest single diameter read in the band, and where; readings that are gross with 99 % or more are left out. */
  readonly smallest: {
    readonly diameter: Length;
    readonly station: Length;
    readonly angle: Angle | undefined;
  };
  /** Mean ovality of the band's stations, on diameter; undefined with one angle. */
  readonly ovality: Length | undefined;
  /** The angle at which the band is smallest, where that stands out from the noise. */
  readonly smallestAngle: Angle | undefined;
}

/** A reading that its neighbours contradict: flagged, shown, given no weight, never dropped. */
export interface GrossReading {
  /** Index into the profile's readings. */
  readonly reading: number;
  /** Reading minus the band's fit there. */
  readonly residual: Length;
  /** The same in standard uncertainties. */
  readonly residualInU: number;
  /** A likely slip, where one is evident: "ten times too large", "a digit out", …; else "". */
  readonly likely: string;
  /**
   * Probability that it is a gross error [-], by all readings together; 0 where it is below 0.01. Undefined where it was not
   * worked out, and where all angles of the station stand off alike: that is rather a groove, or the wrong station.
   */
  readonly probability?: number | undefined;
}

export interface WearBands {
  readonly kind: "wear bands";
  readonly profile: Profile;
  readonly nominal: Length | undefined;
  /** The smallest diameter allowed, where given. */
  readonly limit: Length | undefined;
  readonly bands: readonly WearBand[];
  readonly edges: readonly BandEdge[];
  readonly gross: readonly GrossReading[];
  /** Readings that count and may yet be gross, with a probability of 0.05 or more: they widen edges and diameters. */
  readonly doubtful?: readonly GrossReading[];
  /** Scatter of the readings about the bands over the stated reading uncertainty; near 1 when all is well. */
  readonly noiseRatio: number;
  readonly degreesOfFreedom: number;
  /** How probable this number of bands is; undefined where it was not worked out. */
  readonly bandCountProbability?: BandCountProbability | undefined;
  /** Why probabilities of edges and bands were not worked out, a sentence; "" where they were. */
  readonly probabilityNote?: string;
  readonly warnings: readonly string[];
}

/** One paired reading of a taper: where, how big, and how far from the line. */
export interface TaperReading {
  readonly station: Length;
  readonly diameter: Length;
  /** Diameter minus the line, on diameter. */
  readonly residual: Length;
  readonly standardUncertainty: Length;
  readonly line: number;
  readonly angle: Angle | undefined;
}

/** Where two tapers meet. */
export interface TaperKink {
  readonly station: Measured<Length>;
  /** How far the kink stands off the one straight line through all, on diameter. */
  readonly offLine: Length;
  /** Taper on either side: change of diameter per length along the axis [-]. */
  readonly before: Measured<number>;
  readonly behind: Measured<number>;
}

/** The shape of a taper's flanks once the straight line is taken away. */
export interface ResidualShape {
  readonly shape: "straight" | "hollow" | "barrel" | "kinked" | "cannot tell";
  /** Height of the bow in the middle over the ends, on diameter; positive for a barrel. */
  readonly bow: Measured<Length> | undefined;
  /** Where the flanks are kinked, in the order of the stations. */
  readonly kinks?: readonly TaperKink[];
  /** One sentence in the words of the trade. */
  readonly text: string;
}

export interface TaperFit {
  readonly kind: "taper";
  readonly profile: Profile;
  /** "least squares" weights the diameters only; "errors in both" (York) weights stations too. */
  readonly method: "least squares" | "errors in both";
  /** Diameter change per length along the axis [-]; positive when the diameter grows with the station. */
  readonly taper: Measured<number>;
  /** Half angle, between surface and axis. */
  readonly halfAngle: Measured<Angle>;
  /** Included angle, between opposite surfaces: twice the half angle. */
  readonly includedAngle: Measured<Angle>;
  /** Diameter at the small and the large end of the readings. */
  readonly smallEnd: { readonly station: Length; readonly diameter: Measured<Length> };
  readonly largeEnd: { readonly station: Length; readonly diameter: Measured<Length> };
  /** Axial length between the first and last reading used. */
  readonly length: Length;
  readonly readings: readonly TaperReading[];
  readonly gross: readonly GrossReading[];
  readonly residualShape: ResidualShape;
  /** Scatter about the line over the stated reading uncertainty. */
  readonly noiseRatio: number;
  readonly degreesOfFreedom: number;
  readonly warnings: readonly string[];
}
