package annulus.store;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
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
 * @param state where the job stood after it; empty where an older version did not note it
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
    OptionalLong undoes,
    Optional<JobState> state) {
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

  /** Whether it leaves the joint open, as far as is known. */
  public boolean opens() {
    return state.filter(s -> !s.closed()).isPresent();
  }

  /** The changes that hold still: neither those taken back nor the taking back. */
  public static List<JobChange> inForce(List<JobChange> changes) {
    Set<Long> undone = undone(changes);
    return changes.stream().filter(c -> c.undoes().isEmpty() && !undone.contains(c.id())).toList();
  }

  /** Ids of those changes of a job that later ones took back. */
  public static Set<Long> undone(List<JobChange> changes) {
    Set<Long> undone = new HashSet<>();
    changes.forEach(c -> c.undoes().ifPresent(undone::add));
    return undone;
  }
}
