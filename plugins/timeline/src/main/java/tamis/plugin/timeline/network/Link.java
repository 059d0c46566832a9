package tamis.plugin.timeline.network;

/** The start of {@code to} lies at least {@code lag} microseconds after that of {@code from}. */
public record Link(int from, int to, long lag) {}
