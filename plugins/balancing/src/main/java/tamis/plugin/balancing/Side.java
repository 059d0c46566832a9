package tamis.plugin.balancing;

/** A side of a bound. */
public enum Side {
  LOW,
  HIGH
}
