package tamis.plugin.costing;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** One stage of work and the money in it. */
public record StageRisk(
    @Described(value = "Id of the stage; `all` where a formula names none", example = "syrup")
        String stage,
    @Described(value = "Formula of the part it belongs to; absent for the formula itself")
        @Nullable String part,
    @Described(value = "Pointer of the part from the formula; empty for the formula itself")
        String path,
    @Described(value = "For a person", example = "Cook the syrup") @Nullable String title,
    @Described(value = "How long, all repeats together", unit = "min") @Nullable Double minutes,
    @Described("Added in this stage") Money added,
    @Described("Spent when this stage ends") Money spent,
    @Described("Still to be spent after it") Money toCome,
    @Described("What is lost if this stage fails: all that went into it, with the parts it took up")
        Money restart,
    @Described(
            value = "Time until this stage is done again, parts side by side; absent if not known",
            unit = "min")
        @Nullable Double restartMinutes,
    @Described(value = "Hands' time for doing it again; absent if not known", unit = "min")
        @Nullable Double restartHandsMinutes) {}
