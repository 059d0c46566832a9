package tamis.api.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.CsvInput;
import tamis.api.representation.Format;
import tamis.api.representation.Formats;
import tamis.api.representation.Options;
import tamis.api.representation.QueryInput;
import tamis.api.representation.ResultCsv;
import tamis.api.representation.ResultJson;
import tamis.api.store.Document;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.api.store.Stored;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.price.Price;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** Reads and replaces the price list as a whole, as JSON or as a spreadsheet's CSV. */
final class Prices {
  private static final String AUTHOR = "local";
  private static final List<Format> FORMATS = List.of(Format.JSON, Format.CSV);
  private static final List<String> COLUMNS =
      List.of("ingredient", "pack", "price", "yieldPercent", "supplier");

  private final Store store;
  private final Bodies bodies;
  private final Limits limits;
  private final int longestQuery;

  Prices(Store store, Bodies bodies, ServerSettings settings) {
    this.store = store;
    this.bodies = bodies;
    this.limits = settings.limits();
    this.longestQuery = settings.queryBytes();
  }

  /** The list as it is now. */
  private record Now(PriceList prices, int number) {}

  private Now now() {
    @Nullable Stored stored = store.read(Kind.PRICES, Document.PRICES);
    return stored == null
        ? new Now(PriceList.empty(), 0)
        : new Now((PriceList) Objects.requireNonNull(stored.document()).record(), stored.number());
  }

  Reply read(Context call, boolean csvEnding) {
    var given = QueryInput.plain(call.queryString(), longestQuery, "format", "decimal", "bom");
    return reply(call, csvEnding, given, now());
  }

  private static Reply reply(Context call, boolean csvEnding, Map<String, String> given, Now now) {
    var options = options(given);
    var format = Formats.choose(options.format(), csvEnding, call.header("Accept"), FORMATS);
    boolean csv = format.equals(Format.CSV);
    byte[] body = csv ? csv(now.prices(), options) : ResultJson.bytes(now.prices());
    return Reply.of(200, format.contentType(), body).ofRevision(now.number());
  }

  private static byte[] csv(PriceList prices, Options options) {
    List<List<String>> rows = new ArrayList<>();
    for (Price price : prices.prices()) {
      rows.add(
          List.of(
              price.ingredient(),
              number(price.pack().toString(), options),
              number(price.price().toString(), options),
              price.yieldPercent() == null ? "" : number(price.yieldPercent().toString(), options),
              Objects.requireNonNullElse(price.supplier(), "")));
    }
    return ResultCsv.rows(COLUMNS, rows, options);
  }

  private static String number(String text, Options options) {
    String plain = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    return options.decimalComma() ? plain.replace('.', ',') : plain;
  }

  private static Options options(Map<String, String> given) {
    return new Options(
        given.get("format"),
        null,
        isComma(given),
        false,
        null,
        "yes".equals(given.get("bom")),
        false,
        true,
        null);
  }

  private static boolean isComma(Map<String, String> given) {
    String decimal = given.getOrDefault("decimal", "point");
    if (!decimal.equals("comma") && !decimal.equals("point")) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/decimal",
              decimal,
              "comma or point",
              "`decimal` must be comma or point, was " + decimal));
    }
    return decimal.equals("comma");
  }

  Reply replace(Context call) throws IOException {
    var given = QueryInput.plain(call.queryString(), longestQuery, "format", "decimal");
    var before = now();
    if (Conditions.isCreation(call)) {
      if (before.number() > 0) {
        throw Refusal.of(FaultCode.STALE, "the prices are there already");
      }
    } else {
      Conditions.seen(call.req().getHeader("If-Match"), before.number());
    }
    var document = Document.of(list(call, isComma(given)));
    var stored =
        before.number() == 0 ? created(document) : store.replace(document, before.number(), AUTHOR);
    return reply(call, false, given, new Now((PriceList) document.record(), stored.number()));
  }

  /** A first list that somebody else made meanwhile is one that the caller has not seen. */
  private Stored created(Document document) {
    try {
      return store.create(document, AUTHOR);
    } catch (Refusal refusal) {
      boolean overtaken = refusal.faults().get(0).code() == FaultCode.EXISTS;
      throw overtaken ? Refusal.of(FaultCode.STALE, "the prices are there already") : refusal;
    }
  }

  private PriceList list(Context call, boolean decimalComma) throws IOException {
    byte @Nullable [] csv = bodies.csv(call);
    if (csv == null) {
      return new RecordReader(References.UNCHECKED, limits)
          .read(PriceList.class, bodies.read(call).tree());
    }
    return new RecordReader(References.UNCHECKED, limits, true, decimalComma)
        .read(PriceList.class, Map.of("prices", CsvInput.rows(csv, decimalComma, COLUMNS)));
  }
}
