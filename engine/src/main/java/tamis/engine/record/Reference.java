package tamis.engine.record;

/**
 * A name of something kept elsewhere; checked while reading, so that look-up faults join the rest.
 */
public interface Reference {}
