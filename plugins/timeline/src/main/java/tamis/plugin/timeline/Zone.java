package tamis.plugin.timeline;

import java.time.DateTimeException;
import java.time.ZoneId;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A time zone.
 *
 * @param id as the time-zone database names it
 */
public record Zone(ZoneId id) {

  /** Reads a name of the time-zone database. */
  public static Zone parse(String text) {
    String given = text.strip();
    try {
      return new Zone(ZoneId.of(given));
    } catch (DateTimeException unknown) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "",
              given,
              "a name of the time-zone database such as Europe/Zurich",
              "`" + given + "` is no time zone; names are like Europe/Zurich"));
    }
  }

  @Override
  public String toString() {
    return id.getId();
  }
}
