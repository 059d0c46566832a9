package tamis.plugin.intake;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;
import tamis.plugin.intake.name.NamesByLanguage;
import tamis.plugin.intake.name.Shares;

/** Brings {@code intake} and the words it reads by. */
public final class IntakePlugin implements Plugin {
  @Override
  public String name() {
    return "intake";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Intake());
  }

  @Override
  public List<Table> tables() {
    return List.of(NamesByLanguage.BY_PLACE, Shares.TABLE);
  }
}
