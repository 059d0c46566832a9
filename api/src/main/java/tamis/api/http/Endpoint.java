package tamis.api.http;

import io.javalin.http.Context;

/** What answers at a path to a verb. */
@FunctionalInterface
interface Endpoint {
  /**
   * @throws tamis.engine.fault.Refusal if there is no answer
   */
  Reply answer(Context call) throws Exception;
}
