/**
 * Weighted sums of some readings about their own middle, to which readings, or the sums of others, can be
 * joined.
 *
 * Nothing is ever subtracted, so no digits cancel, whatever the offset of the readings.
 * The one class of this folder that changes in place: the search over partitions updates it millions of
 * times.
 *
 * @source T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983) 242-247 (from memory)
 */
export class RunningSums {
  /** Σ w. */
  w = 0;
  /** Weighted middle of positions and readings. */
  x = 0;
  y = 0;
  /** Σ w (x−x̄)², Σ w (x−x̄)(y−ȳ), Σ w (y−ȳ)². */
  xx = 0;
  xy = 0;
  yy = 0;

  clear(): void {
    this.w = 0;
    this.x = 0;
    this.y = 0;
    this.xx = 0;
    this.xy = 0;
    this.yy = 0;
  }

  set(other: RunningSums): void {
    this.w = other.w;
    this.x = other.x;
    this.y = other.y;
    this.xx = other.xx;
    this.xy = other.xy;
    this.yy = other.yy;
  }

  /** Joins one reading. */
  add(w: number, x: number, y: number): void {
    const dx = x - this.x;
    const dy = y - this.y;
    const share = w / (this.w + w);
    const lever = this.w * share;
    this.xx += lever * dx * dx;
    this.xy += lever * dx * dy;
    this.yy += lever * dy * dy;
    this.x += share * dx;
    this.y += share * dy;
    this.w += w;
  }

  /** Joins the readings that other sums stand for. */
  join(w: number, x: number, y: number, xx: number, xy: number, yy: number): void {
    this.add(w, x, y);
    this.xx += xx;
    this.xy += xy;
    this.yy += yy;
  }

  /** Chi-square about the mean. */
  flat(): number {
    return this.yy;
  }

  /** Chi-square about the sloping line; 0 where all positions are alike or the line passes through all. */
  sloping(): number {
    return this.xx > 0 ? Math.max(0, this.yy - (this.xy * this.xy) / this.xx) : 0;
  }
}
