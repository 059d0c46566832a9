package tamis.engine.table;

/**
 * Where facts were published.
 *
 * @param key by which rows name it
 * @param title of the work
 * @param edition or date
 * @param publisher who answers for it
 * @param licence under which its facts may be used
 */
public record Source(String key, String title, String edition, String publisher, String licence) {}
