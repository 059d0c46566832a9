package tamis.plugin.pans;

import java.util.stream.DoubleStream;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Volume;

/**
 * What one pan holds to the rim.
 *
 * @param millilitres the figure to work with, and the least and most of those that are known
 */
record Held(Spread millilitres) {

  /** Water that was filled in beats the table and geometry; the spread shows all that is known. */
  static Held of(PanRef pan, @Nullable Volume measured, Notes notes) {
    Pans pans = Pans.standard();
    if (measured == null) {
      return new Held(pans.millilitres(pan, notes, "/pan", "/millilitres"));
    }
    double own = measured.millilitres() * pans.cavities(pan);
    Spread other = pans.millilitres(pan);
    double low = DoubleStream.of(own, other.low(), other.high()).min().orElseThrow();
    double high = DoubleStream.of(own, other.low(), other.high()).max().orElseThrow();
    return new Held(new Spread(low, own, high));
  }
}
