package tamis.plugin.intake;

import tamis.engine.record.Described;

/** What a person wrote in place of a line that could not be read. */
public record Correction(
    @Described(value = "The line as it stands in the source", most = 4_000) String text,
    @Described(
            value = "What is read instead of it: lines with | between them, or - for none",
            most = 4_000)
        String instead) {}
