package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.plugin.nutrition.IngredientList.Entry;
import tamis.plugin.nutrition.IngredientList.Quid;

/** Writes the entries of a list by the rules of a regime. */
final class ListText {
  private static final double USUAL_MINOR_PERCENT = 2;

  private final IngredientList.Input input;
  private final LabelRegime regime;
  private final Baked baked;
  private final Map<String, Quid> quid;
  private final Notes notes;
  private final List<String> major = new ArrayList<>();
  private final List<String> minor = new ArrayList<>();
  private final List<Entry> entries = new ArrayList<>();

  ListText(IngredientList.Input input, Baked baked, Map<String, Quid> quid, Notes notes) {
    this.input = input;
    this.regime = input.regime();
    this.baked = baked;
    this.quid = quid;
    this.notes = notes;
  }

  void write(List<ListNode> nodes) {
    double used = nodes.stream().mapToDouble(ListNode::grams).sum();
    LabelRules.cite(regime, "order", notes, "/text");
    LabelRules.cite(regime, "compound", notes, "/text");
    notes.cite(AllergenRules.wording(regime.allergens()), "/text");
    List<ListNode> listed = regime.isAmerican() ? nodes : withAddedWater(nodes, used);
    for (ListNode node : listed) {
      double percent = used > 0 ? node.grams() / used * 100 : 0;
      boolean last = regime.isAmerican() && percent <= minorPercent();
      String marked = marked(node);
      (last ? minor : major).add(marked);
      @Nullable Ingredient ingredient = node.ingredient();
      entries.add(
          new Entry(
              capitals(marked),
              ingredient == null ? null : ingredient.id(),
              ingredient == null ? node.name() : null,
              node.grams(),
              percent,
              last));
    }
    if (!minor.isEmpty()) {
      LabelRules.cite(regime, "minor-percent", notes, "/text");
    }
    if (nodes.stream().anyMatch(node -> node.grams() == 0)) {
      notes.remark(
          "no-weight",
          "/formula",
          "what is used as needed has no weight and stands last; weigh it to give it its place");
    }
  }

  private double minorPercent() {
    return input.minorPercent() == null ? USUAL_MINOR_PERCENT : input.minorPercent();
  }

  /** Water counts as finished weight less all else; little of it may be left out. */
  private List<ListNode> withAddedWater(List<ListNode> nodes, double used) {
    double water = nodes.stream().filter(ListNode::isWater).mapToDouble(ListNode::grams).sum();
    @Nullable Row rule = LabelRules.rule(regime, "added-water-percent");
    if (water == 0 || rule == null) {
      return nodes;
    }
    notes.cite(rule, "/text");
    double left = Math.max(0, water - (used - baked.grams()));
    boolean out = left / baked.grams() * 100 <= rule.number("value");
    if (out) {
      notes.remark(
          "added-water",
          "/formula",
          "after baking, added water is "
              + Rounded.plain(left / baked.grams() * 100, 0.1)
              + " % of the product; up to 5 % it is left out of the list");
    }
    List<ListNode> listed = new ArrayList<>();
    for (ListNode node : nodes) {
      if (!node.isWater()) {
        listed.add(node);
      } else if (!out) {
        listed.add(node.weighing(left * node.grams() / water));
      }
    }
    listed.sort(Comparator.comparingDouble(ListNode::grams).reversed());
    return listed;
  }

  private String marked(ListNode node) {
    @Nullable Ingredient ingredient = node.ingredient();
    if (ingredient == null) {
      return node.name()
          + " ("
          + String.join(", ", node.within().stream().map(this::marked).toList())
          + ")";
    }
    @Nullable Quid percent = quid.get(ingredient.id());
    return LabelName.marked(ingredient, regime, percent == null ? "" : " (" + percent.text() + ")");
  }

  List<Entry> entries() {
    return List.copyOf(entries);
  }

  String text() {
    return capitals(whole());
  }

  String html() {
    return whole()
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace(String.valueOf(LabelName.MARK), "<strong>")
        .replace(String.valueOf(LabelName.END), "</strong>");
  }

  private String whole() {
    String list = String.join(", ", major);
    if (minor.isEmpty()) {
      return list;
    }
    String lead = "contains " + Rounded.plain(minorPercent(), 0.1) + "% or less of: ";
    return list + (list.isEmpty() ? "" : ", ") + lead + String.join(", ", minor);
  }

  private static String capitals(String marked) {
    StringBuilder text = new StringBuilder();
    int at = 0;
    while (at < marked.length()) {
      int start = marked.indexOf(LabelName.MARK, at);
      if (start < 0) {
        return text.append(marked, at, marked.length()).toString();
      }
      int end = marked.indexOf(LabelName.END, start);
      text.append(marked, at, start);
      text.append(marked.substring(start + 1, end).toUpperCase(Locale.ROOT));
      at = end + 1;
    }
    return text.toString();
  }
}
