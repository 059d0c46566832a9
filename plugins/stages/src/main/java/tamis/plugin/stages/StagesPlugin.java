package tamis.plugin.stages;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings what is worked out about stages of work, with the tables it rests on. */
public final class StagesPlugin implements Plugin {
  @Override
  public String name() {
    return "stages";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(
        new SugarSyrup(),
        new HeatBalance(),
        new Warming(),
        new StageCheck(),
        new EggLethality(),
        new WaterActivity());
  }

  @Override
  public List<Table> tables() {
    return List.of(
        SyrupStages.TABLE,
        BoilingElevation.TABLE,
        Equation.TABLE,
        SolidFat.CURVES,
        SolidFat.HEATS,
        Surface.TABLE,
        Bowl.TABLE,
        StageWindows.TABLE,
        Symptoms.TABLE,
        Resistance.TABLE,
        EggLethality.PASTEURISATION,
        Solute.TABLE,
        WaterActivity.LIMITS);
  }
}
