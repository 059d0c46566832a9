package tamis.api.representation;

import tamis.engine.spi.Calculation;

/**
 * A calculation with the plugin that brings it.
 *
 * @param plugin name of the plugin
 * @param calculation what it offers
 */
public record Offered(String plugin, Calculation<?, ?> calculation) {}
