package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiParam;
import io.javalin.openapi.OpenApiRequestBody;
import io.javalin.openapi.OpenApiResponse;
import java.io.IOException;
import tamis.api.representation.Problem;
import tamis.api.store.Store;
import tamis.engine.price.PriceList;

/** All prices of the shop, read and replaced as a whole. */
final class PriceHandler {
  private static final String PATH = "/v1/prices";
  private static final String TAG = "prices";

  private final Prices prices;

  PriceHandler(Store store, Bodies bodies, ServerSettings settings) {
    this.prices = new Prices(store, bodies, settings);
  }

  void register(Routes routes) {
    routes.get(PATH, this::read);
    routes.put(PATH, this::replace);
    routes.get(PATH + ".csv", this::csv);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "getPrices",
      summary = "Reads all prices",
      description = "As JSON, or as CSV for a spreadsheet.",
      queryParams = {
        @OpenApiParam(name = "format", description = "`json` or `csv`", example = "csv"),
        @OpenApiParam(
            name = "decimal",
            description = "`comma`: decimal commas, with semicolons between cells",
            example = "point"),
        @OpenApiParam(
            name = "bom",
            description = "`yes`: begins with a byte order mark",
            example = "no")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = {
              @OpenApiContent(from = PriceList.class),
              @OpenApiContent(from = String.class, mimeType = "text/csv")
            },
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "The revision; \"0\" as long as there are none",
                  example = "\"3\"")
            }),
        @OpenApiResponse(status = "304", description = "The caller has this already")
      })
  Reply read(Context call) {
    return prices.read(call, false);
  }

  @OpenApi(
      path = PATH + ".csv",
      methods = HttpMethod.GET,
      tags = TAG,
      operationId = "getPricesCsv",
      summary = "Reads all prices as CSV",
      description = "The address that a spreadsheet is given.",
      queryParams = {
        @OpenApiParam(
            name = "decimal",
            description = "`comma`: decimal commas, with semicolons between cells",
            example = "point"),
        @OpenApiParam(
            name = "bom",
            description = "`yes`: begins with a byte order mark",
            example = "no")
      },
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "OK",
            content = {@OpenApiContent(from = String.class, mimeType = "text/csv")},
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "The revision; \"0\" as long as there are none",
                  example = "\"3\"")
            }),
        @OpenApiResponse(status = "304", description = "The caller has this already")
      })
  Reply csv(Context call) {
    return prices.read(call, true);
  }

  @OpenApi(
      path = PATH,
      methods = HttpMethod.PUT,
      tags = TAG,
      operationId = "putPrices",
      summary = "Replaces all prices",
      description = "All rows are judged at once; all are kept or none.",
      queryParams = {
        @OpenApiParam(name = "format", description = "`json` or `csv`", example = "csv"),
        @OpenApiParam(
            name = "decimal",
            description = "`comma`: decimal commas, with semicolons between cells",
            example = "point")
      },
      headers = {
        @OpenApiParam(
            name = "If-Match",
            description = "The revision that is changed",
            example = "\"3\""),
        @OpenApiParam(name = "If-None-Match", description = "`*`: it must be new", example = "*")
      },
      requestBody =
          @OpenApiRequestBody(
              required = true,
              content = {
                @OpenApiContent(from = PriceList.class),
                @OpenApiContent(from = String.class, mimeType = "text/csv")
              }),
      responses = {
        @OpenApiResponse(
            status = "200",
            description = "Replaced",
            content = {
              @OpenApiContent(from = PriceList.class),
              @OpenApiContent(from = String.class, mimeType = "text/csv")
            },
            headers = {
              @OpenApiParam(
                  name = "ETag",
                  description = "The revision; \"0\" as long as there are none",
                  example = "\"3\"")
            }),
        @OpenApiResponse(
            status = "412",
            description = "The prices are other ones by now",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE)),
        @OpenApiResponse(
            status = "428",
            description = "No condition was sent",
            content = @OpenApiContent(from = Problem.class, mimeType = Problem.CONTENT_TYPE))
      })
  Reply replace(Context call) throws IOException {
    return prices.replace(call);
  }
}
