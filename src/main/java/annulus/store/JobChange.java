package annulus.store;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.OptionalLong;
import java.util.Set;

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
 * @param first whether it entered the job, so that there is nothing before it
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
    boolean first,
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

  /** Ids of those changes of a job that later ones took back. */
  public static Set<Long> undone(List<JobChange> changes) {
    Set<Long> undone = new HashSet<>();
    changes.forEach(c -> c.undoes().ifPresent(undone::add));
    return undone;
  }
}
