package tamis.api.http;

import java.util.List;
import tamis.engine.record.Described;
import tamis.engine.trial.Observation;

/** The observations of a trial. */
public record ObservationList(
    @Described("Observations in the order in which they came") List<Observation> items) {
  public ObservationList {
    items = List.copyOf(items);
  }
}
