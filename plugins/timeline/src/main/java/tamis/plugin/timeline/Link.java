package tamis.plugin.timeline;

/** The start of {@code to} lies at least {@code lag} microseconds after that of {@code from}. */
record Link(int from, int to, long lag) {}
