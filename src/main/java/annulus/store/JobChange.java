package annulus.store;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * One change of a job, kept for good.
 *
 * @param id rising number
 * @param job which job
 * @param version the job's version after it
 * @param at when
 * @param who who did it
 * @param kind what sort of change
 * @param words what was done, in words
 * @param before the content before; empty for the first entry
 * @param after the content after
 * @param undoes the change that this one takes back
 */
public record JobChange(
    long id,
    String job,
    long version,
    Instant at,
    String who,
    Kind kind,
    String words,
    Optional<JobContent> before,
    JobContent after,
    OptionalLong undoes) {
  /** Sorts of changes. */
  public enum Kind {
    ENTERED,
    STATE,
    CLOSED,
    ORDER,
    PROMISE,
    LOG,
    UNDO
  }
}
