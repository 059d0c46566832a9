package tamis.plugin.timeline;

import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Described;

/** When hands are there: once on a date, or every day. */
public record Shift(
    @Described(
            value = "Begin: a local date-time, or a time of day for every day",
            example = "04:00")
        ShiftTime from,
    @Described(
            value = "End; a time of day before that of `from` is on the next day",
            example = "12:00")
        ShiftTime to) {

  public Shift {
    if (from.isDaily() != to.isDaily()) {
      throw refusal(from, to, "`from` and `to` must both be date-times or both times of day");
    }
    if (from.equals(to) || (!from.isDaily() && to.dateTime().isBefore(from.dateTime()))) {
      throw refusal(from, to, "a shift must end after it begins");
    }
  }

  private static Refusal refusal(ShiftTime from, ShiftTime to, String rule) {
    return new Refusal(
        new Fault(
            FaultCode.INCONSISTENT,
            "/to",
            to.toString(),
            "after " + from,
            rule + "; was given " + from + " to " + to));
  }
}
