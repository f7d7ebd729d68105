package annulus.web;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import java.net.InetAddress;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/**
 * Lets in who may come in: the right host name, no page of another site, the passcode where one is
 * set. Says with every answer what a browser may do with it.
 */
final class Guard {
  static final String SESSION = "annulus-session";
  private static final String POLICY =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self';"
          + " form-action 'self'; base-uri 'none'; frame-ancestors 'none'";
  private static final Pattern PORT = Pattern.compile(":[0-9]+$");
  private static final Pattern ADDRESS =
      Pattern.compile("[0-9]{1,3}(\\.[0-9]{1,3}){3}|\\[[0-9a-fA-F:.]+]");
  private static final Duration SESSION_LENGTH = Duration.ofHours(16);
  private static final int MOST_FAILURES = 20;
  private static final Set<String> OPEN_PATHS = Set.of("/enter", "/board.css", "/mark.svg");

  private final Optional<String> passcode;
  private final Optional<String> ownName;
  private final SecureRandom random = new SecureRandom();
  private final Map<String, Instant> sessions = new ConcurrentHashMap<>();
  private final AtomicInteger failures = new AtomicInteger();
  private volatile Instant lastFailure = Instant.EPOCH;

  Guard(Optional<String> passcode, Optional<String> ownName) {
    this.passcode = passcode;
    this.ownName = ownName;
  }

  /** What the guard says of a request. */
  enum Verdict {
    WELCOME,
    WRONG_HOST,
    OTHER_SITE,
    NO_PASSCODE
  }

  void headers(Context ctx) {
    ctx.header("Content-Security-Policy", POLICY);
    ctx.header("X-Content-Type-Options", "nosniff");
    ctx.header("X-Frame-Options", "DENY");
    ctx.header("Referrer-Policy", "same-origin");
    ctx.header("Cross-Origin-Opener-Policy", "same-origin");
    ctx.header("Cross-Origin-Resource-Policy", "same-origin");
    ctx.header("Cache-Control", "no-store");
  }

  /** The policy for a page of the program's own that carries its style inside. */
  static String policyWithStyle(String style) {
    return POLICY.replace("style-src 'self'", "style-src 'sha256-" + sha256(style) + "'");
  }

  private static String sha256(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return Base64.getEncoder().encodeToString(hash);
    } catch (java.security.NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  Verdict judge(Context ctx, Instant now) {
    String host = Optional.ofNullable(ctx.header("Host")).orElse("");
    if (!known(host)) {
      return Verdict.WRONG_HOST;
    }
    boolean reads = ctx.method() == HandlerType.GET || ctx.method() == HandlerType.HEAD;
    if (!reads && !sameSite(ctx, host)) {
      return Verdict.OTHER_SITE;
    }
    boolean open = passcode.isEmpty() || OPEN_PATHS.contains(ctx.path()) || inside(ctx, now);
    return open ? Verdict.WELCOME : Verdict.NO_PASSCODE;
  }

  /** A name that somebody else can point at this machine is refused: numbers and own names only. */
  private boolean known(String host) {
    String name = PORT.matcher(host).replaceAll("");
    boolean number = ADDRESS.matcher(name).matches();
    return number
        || name.equalsIgnoreCase("localhost")
        || ownName.filter(n -> n.equalsIgnoreCase(name)).isPresent();
  }

  private static boolean sameSite(Context ctx, String host) {
    String site = ctx.header("Sec-Fetch-Site");
    if (site != null && !site.equals("same-origin") && !site.equals("none")) {
      return false;
    }
    String origin = ctx.header("Origin");
    return origin == null || origin.equals("http://" + host) || origin.equals("https://" + host);
  }

  private boolean inside(Context ctx, Instant now) {
    String bearer = Optional.ofNullable(ctx.header("Authorization")).orElse("");
    if (bearer.startsWith("Bearer ")) {
      return right(bearer.substring("Bearer ".length()), now);
    }
    String session = ctx.cookie(SESSION);
    Instant until = session == null ? null : sessions.get(session);
    return until != null && now.isBefore(until);
  }

  /** Whether a passcode is right; after many wrong ones nobody gets in for a minute. */
  boolean right(String given, Instant now) {
    boolean locked = failures.get() >= MOST_FAILURES && now.isBefore(lastFailure.plusSeconds(60));
    if (locked) {
      return false;
    }
    byte[] wanted = passcode.orElse("").getBytes(StandardCharsets.UTF_8);
    if (MessageDigest.isEqual(wanted, given.getBytes(StandardCharsets.UTF_8))) {
      failures.set(0);
      return true;
    }
    failures.incrementAndGet();
    lastFailure = now;
    return false;
  }

  /** A session for who gave the right passcode. */
  String session(Instant now) {
    byte[] bytes = new byte[24];
    random.nextBytes(bytes);
    String session = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
    sessions.values().removeIf(now::isAfter);
    sessions.put(session, now.plus(SESSION_LENGTH));
    return session;
  }

  /** The own name in an address such as {@code http://workshop:7407}. */
  static Optional<String> nameIn(Optional<String> address, InetAddress listen) {
    Optional<String> named = address.map(a -> java.net.URI.create(a).getHost());
    return named.or(() -> Optional.of(listen.getHostName()));
  }
}
