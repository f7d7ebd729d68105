package annulus.store;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What was typed at the bench and is not a job yet.
 *
 * @param id its identity
 * @param version raised with every save
 * @param fields by name, as typed
 * @param changedAt when
 * @param changedBy who; may be empty
 */
public record Draft(
    String id, long version, Map<String, String> fields, Instant changedAt, String changedBy) {
  public Draft {
    fields = Collections.unmodifiableMap(new LinkedHashMap<>(fields));
  }

  /** A field as typed; empty where nothing was. */
  public String field(String name) {
    return fields.getOrDefault(name, "");
  }
}
