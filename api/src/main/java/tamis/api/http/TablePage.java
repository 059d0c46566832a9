package tamis.api.http;

import java.util.List;
import java.util.Map;
import tamis.engine.record.Described;

/** A reference table. */
public record TablePage(
    @Described(value = "Its name", example = "densities") String name,
    @Described(value = "What it holds", example = "Mass of a millilitre, by state") String title,
    @Described("Its columns, in their order") List<String> columns,
    @Described("Its rows: cells by column, without those that are empty")
        List<Map<String, String>> rows) {}
