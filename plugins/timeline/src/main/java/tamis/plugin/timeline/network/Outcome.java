package tamis.plugin.timeline.network;

/** A plan that was found, in microseconds, and how good it is known to be. */
public final class Outcome {
  private final long[] starts;
  private final long bound;
  private final boolean best;

  /**
   * @param starts the start of each
   * @param bound no plan ends before this; counted backwards, none starts after
   * @param best whether it is known that none is better
   */
  Outcome(long[] starts, long bound, boolean best) {
    this.starts = starts;
    this.bound = bound;
    this.best = best;
  }

  public long[] starts() {
    return starts;
  }

  public long bound() {
    return bound;
  }

  public boolean isBest() {
    return best;
  }
}
