package tamis.api.store;

import java.time.Clock;

class MemoryStoreTest extends StoreContract {
  @Override
  protected Store open() {
    return new MemoryStore(Clock.systemUTC());
  }
}
