package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiParam;
import io.javalin.openapi.OpenApiResponse;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.api.http.TableList.TableItem;
import tamis.api.plugin.Plugins;
import tamis.api.representation.Format;
import tamis.api.representation.Formats;
import tamis.api.representation.Options;
import tamis.api.representation.QueryInput;
import tamis.api.representation.ResultCsv;
import tamis.api.representation.ResultJson;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Nearest;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/** The reference tables, each row with its source. */
final class TableHandler {
  private static final String CSV_ENDING = ".csv";
  private static final List<Format> FORMATS = List.of(Format.JSON, Format.CSV);

  private final Plugins plugins;
  private final int longestQuery;

  TableHandler(Plugins plugins, ServerSettings settings) {
    this.plugins = plugins;
    this.longestQuery = settings.queryBytes();
  }

  void register(Routes routes) {
    routes.get("/v1/tables", this::list);
    routes.get("/v1/tables/{name}", this::read);
  }

  @OpenApi(
      path = "/v1/tables",
      methods = HttpMethod.GET,
      tags = "tables",
      operationId = "listTables",
      summary = "Lists reference tables",
      description = "Those of the engine and of plugins.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(from = TableList.class)))
  Reply list(Context call) {
    QueryInput.plain(call.queryString(), longestQuery);
    var items =
        plugins.tables().values().stream()
            .map(table -> new TableItem(table.name(), table.title(), table.rows().size()))
            .sorted(Comparator.comparing(TableItem::name))
            .toList();
    return Reply.json(ResultJson.bytes(new TableList(items)));
  }

  @OpenApi(
      path = "/v1/tables/{name}",
      methods = HttpMethod.GET,
      tags = "tables",
      operationId = "getTable",
      summary = "Reads a reference table",
      description = "Each row has its source; CSV also under a path that ends in .csv.",
      pathParams = @OpenApiParam(name = "name", required = true, example = "densities"),
      queryParams = {
        @OpenApiParam(name = "format", description = "json or csv; goes before `Accept`"),
        @OpenApiParam(name = "decimal", description = "comma or point, in CSV"),
        @OpenApiParam(name = "bom", description = "yes: CSV begins with a byte order mark")
      },
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = {
                @OpenApiContent(from = TablePage.class),
                @OpenApiContent(from = String.class, mimeType = "text/csv")
              }))
  Reply read(Context call) {
    String asked = call.pathParam("name");
    boolean csv = asked.endsWith(CSV_ENDING);
    var table = table(csv ? asked.substring(0, asked.length() - CSV_ENDING.length()) : asked);
    var given = QueryInput.plain(call.queryString(), longestQuery, "format", "decimal", "bom");
    var options = options(given);
    var format = Formats.choose(options.format(), csv, call.header("Accept"), FORMATS);
    return Reply.of(
        200,
        format.contentType(),
        format.equals(Format.CSV)
            ? ResultCsv.table(table, options)
            : ResultJson.bytes(page(table)));
  }

  private static TablePage page(Table table) {
    var rows = table.rows().stream().map(row -> cells(table, row)).toList();
    return new TablePage(table.name(), table.title(), table.columns(), rows);
  }

  private static Map<String, String> cells(Table table, Row row) {
    var cells = new LinkedHashMap<String, String>();
    for (String column : table.columns()) {
      @Nullable String cell = row.textOrNull(column);
      if (cell != null) {
        cells.put(column, cell);
      }
    }
    return cells;
  }

  private static Options options(Map<String, String> given) {
    var faults = new Faults();
    boolean comma = isWord("comma", "point", "decimal", given, faults);
    boolean bom = isWord("yes", "no", "bom", given, faults);
    faults.refuseIfAny();
    return new Options(given.get("format"), null, comma, false, null, bom, false, true, null);
  }

  private static boolean isWord(
      String special, String usual, String name, Map<String, String> given, Faults faults) {
    String word = given.getOrDefault(name, usual);
    if (!word.equals(special) && !word.equals(usual)) {
      String allowed = special + " or " + usual;
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/" + name,
              word,
              allowed,
              "`" + name + "` must be " + allowed + ", was " + word));
    }
    return word.equals(special);
  }

  private Table table(String name) {
    var tables = plugins.tables();
    @Nullable Table table = tables.get(name);
    if (table == null) {
      throw Refusal.of(
          FaultCode.UNKNOWN_TABLE,
          "no table `" + name + "`" + Nearest.suggestion(name, tables.keySet()));
    }
    return table;
  }
}
