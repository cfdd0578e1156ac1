import { describe, expect, it } from "vitest";
import { type CautionTopic, caution } from "../../kernel-helpers/view/caution.js";

const topics: readonly CautionTopic[] = [
  "shaft on supports",
  "turning between centres",
  "loading a repaired shaft",
  "refitting a wheel",
  "first start",
  "pressing off a hub",
  "heating a hub",
  "seized fasteners",
  "heating parts",
  "lifting and stored energy",
  "pouring white metal",
  "scraping a bearing",
];

describe("caution(topic)", () => {
  it.each(topics)("of %s has a title and several points, each a sentence, none twice", (topic) => {
    const { kind, title, points } = caution(topic);
    expect(kind).toBe("caution");
    expect(title).toMatch(/^[A-Z]/);
    expect(points.length).toBeGreaterThan(3);
    expect(new Set(points).size).toBe(points.length);
    for (const point of points) expect(point).toMatch(/^[A-Z].{20,}\.$/);
  });

  it.each(topics)("of %s ends by deferring to local codes and licensed practice", (topic) => {
    expect(caution(topic).points.at(-1)).toMatch(/[Ll]ocal codes.* licensed practice come before/);
  });

  it("names the hurt that the work is known for", () => {
    expect(caution("shaft on supports").points.join(" ")).toMatch(/slings.*hand is between.*lead/);
    expect(caution("loading a repaired shaft").points.join(" ")).toMatch(
      /dye penetrant.*cracked, rust-pitted, welded.*licensed engineer.*guards on/i,
    );
    expect(caution("seized fasteners").points.join(" ")).toMatch(/left-hand.*in line with the wrench/);
    expect(caution("lifting and stored energy").points.join(" ")).toMatch(/Lock and tag.*nobody under/);
    expect(caution("refitting a wheel").points.join(" ")).toMatch(
      /block.*heavy side.*plane of the rim.*lead/,
    );
    expect(caution("first start").points.join(" ")).toMatch(
      /guards.*plane of every wheel.*loose clothing.*hot oil/i,
    );
    expect(caution("pressing off a hub").points.join(" ")).toMatch(
      /never stand in line.*nut on by a few threads.*wood.*iron breaks without warning/i,
    );
    expect(caution("heating a hub").points.join(" ")).toMatch(
      /closed hollow.*bursts.*slowly.*never quench.*fumes/i,
    );
    expect(caution("pouring white metal").points.join(" ")).toMatch(
      /steam.*face shield.*50 µg\/m³.*30 µg\/m³.*1910\.1025.*cadmium or zinc.*no water.*hazardous waste/i,
    );
    expect(caution("scraping a bearing").points.join(" ")).toMatch(/lead.*locked off.*knife/);
    expect(caution("turning between centres").points.join(" ")).toMatch(/whips.*chuck key out.*no gloves/);
  });

  it("cannot be changed by a worksheet", () => {
    const given = caution("shaft on supports");
    expect(Object.isFrozen(given) && Object.isFrozen(given.points)).toBe(true);
    expect(caution("shaft on supports")).toEqual(given);
  });

  it.each(["pouring", "", "toString"])("refuses the unknown work %j and lists those it knows", (topic) => {
    expect(() => caution(topic as CautionTopic)).toThrow(
      `caution: topic must be one of ${topics.join(", ")}, got ${topic}`,
    );
  });
});
