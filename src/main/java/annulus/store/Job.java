package annulus.store;

import java.time.Instant;

/**
 * A job as stored.
 *
 * @param id its lasting identity
 * @param version raised by one with every change
 * @param content what can change
 * @param createdAt when it was entered
 * @param changedAt when it was changed last
 * @param changedBy who changed it last
 */
public record Job(
    String id,
    long version,
    JobContent content,
    Instant createdAt,
    Instant changedAt,
    String changedBy) {
  /** The same job with another content. */
  public Job with(JobContent other) {
    return new Job(id, version, other, createdAt, changedAt, changedBy);
  }
}
