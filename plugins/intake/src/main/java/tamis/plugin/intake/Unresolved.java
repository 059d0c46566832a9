package tamis.plugin.intake;

import java.util.List;
import tamis.engine.record.Described;

/** A line that somebody must look at. */
public record Unresolved(
    @Described("Number of the line in the source, from 1") int line,
    @Described("The line as it stands in the source") String text,
    @Described("Why it is not in the formula") String why,
    @Described("Ids that may be meant") List<String> candidates) {}
