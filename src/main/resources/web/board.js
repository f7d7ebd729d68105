// Small helpers only: every page works without them. All that is shown is made by the server.
(function () {
  "use strict";

  var offline = document.getElementById("offline");

  function connected(yes) {
    if (offline) {
      offline.hidden = yes;
    }
  }

  // Live part: replaced by what the server sends; what has the focus keeps it.
  function live(part) {
    var events = new EventSource(part.dataset.events);
    var lastHeard = Date.now();
    events.addEventListener("show", function (event) {
      lastHeard = Date.now();
      connected(true);
      var html = event.data;
      if (part.dataset.version !== undefined) {
        var cut = html.indexOf("\n");
        changed(part, html.slice(0, cut));
        html = html.slice(cut + 1);
      }
      var focused = document.activeElement && document.activeElement.id;
      var typing = part.contains(document.activeElement) && document.activeElement.tagName === "INPUT";
      if (typing) {
        return;
      }
      part.innerHTML = html;
      var again = focused && document.getElementById(focused);
      if (again && again !== document.activeElement) {
        again.focus({ preventScroll: true });
      }
    });
    events.addEventListener("still", function () {
      lastHeard = Date.now();
      connected(true);
    });
    events.onerror = function () {
      connected(false);
    };
    setInterval(function () {
      if (Date.now() - lastHeard > 40000) {
        connected(false);
      }
    }, 5000);
    window.addEventListener("pagehide", function () {
      events.close();
    });
  }

  // The job is another one than the page was made of: say so, keep what is typed. Before the space
  // stands the version; what is after it the clock alone may change.
  function changed(part, version) {
    if (version === part.dataset.version || document.getElementById("changed")) {
      return;
    }
    var note = document.createElement("p");
    note.id = "changed";
    note.className = "problem";
    note.setAttribute("role", "alert");
    note.textContent = version.split(" ")[0] === part.dataset.version.split(" ")[0]
      ? "Time has gone on: the buttons below are those of before. "
      : "This job was changed on another screen. ";
    var link = document.createElement("a");
    link.href = location.href;
    link.textContent = "Show it anew";
    note.appendChild(link);
    part.before(note);
  }

  // Bench: saved as it is typed, the answer so far comes back.
  function bench(form) {
    var preview = document.getElementById("preview");
    var version = document.getElementById("version");
    var timer = null;
    var running = false;
    var again = false;
    var stopped = false;
    var waiting = null; // the button that is to send the form once it is saved

    function send() {
      stopped = true;
      form.requestSubmit(waiting);
    }

    function grow(input) {
      var box = input.closest(".readings");
      if (!box) {
        return;
      }
      var all = box.querySelectorAll(".set");
      var last = all[all.length - 1];
      if (!last.contains(input) || last.querySelector("input").value === "" || all.length >= 24) {
        return;
      }
      var next = last.cloneNode(true);
      var number = all.length + 1;
      next.querySelectorAll("input").forEach(function (field) {
        field.id = field.name = field.id.replace(/-[0-9]+/, "-" + number);
        field.value = "";
        var label = field.closest("p").querySelector("label");
        label.htmlFor = field.id;
        label.textContent = label.textContent.replace(/[0-9]+/, String(number));
      });
      box.appendChild(next);
    }

    function save() {
      timer = null;
      if (stopped) {
        return;
      }
      if (running) {
        again = true;
        return;
      }
      running = true;
      fetch(form.dataset.save, {
        method: "POST",
        headers: { "Content-Type": "application/x-www-form-urlencoded" },
        body: new URLSearchParams(new FormData(form)).toString()
      })
        .then(function (response) {
          var now = response.headers.get("X-Version");
          if (response.status === 409) {
            stopped = true;
          } else if (now) {
            version.value = now;
          }
          connected(true);
          return response.text().then(function (html) {
            if (waiting && !again) {
              send();
            } else if (response.ok) {
              preview.innerHTML = html;
            } else {
              preview.textContent = response.status === 409
                ? html + " Press a button below to see both."
                : "Not saved.";
            }
          });
        })
        .catch(function () {
          connected(false);
          preview.textContent = waiting
            ? "Not sent: the board can't be reached. It is tried again, leave this page open."
            : "Not saved: the board can't be reached. It is tried again.";
          setTimeout(save, 3000);
        })
        .finally(function () {
          running = false;
          if (again) {
            again = false;
            save();
          }
        });
    }

    form.addEventListener("input", function (event) {
      grow(event.target);
      clearTimeout(timer);
      timer = setTimeout(save, 350);
    });
    form.addEventListener("change", function (event) {
      clearTimeout(timer);
      timer = setTimeout(save, 50);
      if (event.target.id === "lengthUnit" || event.target.id === "temperatureUnit"
        || event.target.id === "placed") {
        clearTimeout(timer);
        form.requestSubmit(form.querySelector(".enter"));
      }
    });
    // it goes only once it is saved: without the board, the browser's own page would lose what is typed
    form.addEventListener("submit", function (event) {
      if (stopped) {
        return;
      }
      event.preventDefault();
      clearTimeout(timer);
      timer = null;
      waiting = event.submitter;
      save();
    });
    // what came back by the back button may have been saved since
    window.addEventListener("pageshow", function (event) {
      if (event.persisted) {
        location.reload();
      }
    });
    window.addEventListener("pagehide", function () {
      if (timer !== null && !stopped && navigator.sendBeacon) {
        navigator.sendBeacon(form.dataset.save, new URLSearchParams(new FormData(form)));
      }
    });
  }

  var part = document.querySelector("[data-events]");
  if (part && window.EventSource) {
    live(part);
  }
  var form = document.getElementById("bench");
  if (form) {
    bench(form);
  }
})();
