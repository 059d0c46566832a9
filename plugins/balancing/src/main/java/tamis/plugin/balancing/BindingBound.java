package tamis.plugin.balancing;

import tamis.engine.record.Described;

/** A bound that stops the mix from being better. */
public record BindingBound(
    @Described(value = "The bound in words", example = "fat at least 8 %") String bound,
    @Described(value = "Where it stands in the request (JSON Pointer)", example = "/bounds/0/low")
        String pointer,
    @Described("Which side it is of") Side side,
    @Described("Where it lies, in its unit") double limit,
    @Described("Its unit") String unit,
    @Described("By how much it is relaxed here, in its unit") double relaxedBy,
    @Described("What the value would come to") double valueThen,
    @Described("How much better that is, in the unit of the value; worked out anew") double gain,
    @Described(
            "Shadow price: gain for each unit close to the bound; of an ingredient's own bound, on"
                + " the way to the one relaxed")
        double shadowPrice,
    @Described("The same as a sentence") String words) {}
