package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** Likely causes of a symptom: those the readings speak for, those they cannot tell, the rest. */
final class Symptoms {
  static final Table TABLE =
      TableReader.read(
          Symptoms.class,
          "/tamis/plugin/stages/symptoms.csv",
          "What a failed batch looks like, and why",
          List.of("symptom", "order"));

  private Symptoms() {}

  static List<StageCheck.Candidate> of(
      Symptom symptom, StageCheck.Verdict verdict, String reading, Notes notes) {
    List<StageCheck.Candidate> speaking = new ArrayList<>();
    List<StageCheck.Candidate> silent = new ArrayList<>();
    List<StageCheck.Candidate> against = new ArrayList<>();
    for (Row row : TABLE.rows()) {
      if (!row.text("symptom").equals(symptom.name().toLowerCase(Locale.ROOT))) {
        continue;
      }
      notes.cite(row, "/candidates");
      String when = row.text("when");
      @Nullable Boolean supported =
          when.equals("any")
              ? null
              : Boolean.valueOf(when.equals(verdict.name().toLowerCase(Locale.ROOT)));
      StageCheck.Candidate candidate =
          new StageCheck.Candidate(
              row.text("cause"),
              supported == null ? "no reading here tells: " + reading : reading,
              supported,
              row.text("remedy"));
      (supported == null ? silent : supported ? speaking : against).add(candidate);
    }
    speaking.addAll(silent);
    speaking.addAll(against);
    return speaking;
  }
}
