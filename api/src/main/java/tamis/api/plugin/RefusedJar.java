package tamis.api.plugin;

/**
 * A jar that was not loaded.
 *
 * @param jar its file name
 * @param why what is wrong with it and what to do
 */
public record RefusedJar(String jar, String why) {}
