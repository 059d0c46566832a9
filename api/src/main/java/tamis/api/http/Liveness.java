package tamis.api.http;

import tamis.engine.record.Described;

/** That the program runs. */
public record Liveness(@Described(value = "`live`", example = "live") String status) {}
