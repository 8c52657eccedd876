// What is entered one by one goes on being entered while nothing can be sent: it waits here, over a closed tab too, and is sent when that
// can be done again. Each entry bears its own id, so that one whose answer was lost is not entered twice.
const prefix = "clutchwright:waiting:";
const pause = 8000;

const keyOf = (form) => `${prefix}${form.dataset.queue}:${form.dataset.about}`;
const read = (key) => JSON.parse(localStorage.getItem(key) ?? "[]");
const write = (key, entries) => (entries.length > 0 ? localStorage.setItem(key, JSON.stringify(entries)) : localStorage.removeItem(key));

function newId() {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  bytes[6] = (bytes[6] & 0x0f) | 0x40;
  bytes[8] = (bytes[8] & 0x3f) | 0x80;
  const hex = [...bytes].map((b) => b.toString(16).padStart(2, "0")).join("");
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-${hex.slice(12, 16)}-${hex.slice(16, 20)}-${hex.slice(20)}`;
}

const hatchlingOf = (entry) => Object.fromEntries(entry.fields).id;

const wordsOf = (entry) => {
  const of = Object.fromEntries(entry.fields);
  const sex = { m: "male", f: "female" }[of.sex] ?? "not sexed";
  return [of.other || of.look || "not looked at", sex, of.mass ? `${of.mass} g` : null].filter(Boolean).join(", ");
};

export function queueWhatIsEntered(form, bind) {
  const key = keyOf(form);
  let isSending = false;

  const tell = (why) => {
    const place = document.querySelector("[data-waiting]");
    if (!place) {
      return;
    }

    const entries = read(key);
    place.hidden = entries.length === 0;
    place.setAttribute("role", "status");
    place.replaceChildren();
    if (entries.length > 0) {
      const head = document.createElement("p");
      head.textContent = `${why ?? "Not sent yet"}: ${entries.length} ${entries.length === 1 ? "hatchling waits" : "hatchlings wait"} on this phone and will be sent by themselves.`;
      const list = document.createElement("ul");
      entries.forEach((entry) => {
        const item = document.createElement("li");
        item.textContent = `${wordsOf(entry)}${entry.isAsked ? ": asked back below" : ""} `;
        const drop = document.createElement("button");
        drop.type = "button";
        drop.className = "quiet";
        drop.textContent = "Leave it out";
        drop.addEventListener("click", () => {
          write(key, read(key).filter((other) => hatchlingOf(other) !== hatchlingOf(entry)));
          tell(why);
        });
        item.append(drop);
        list.append(item);
      });
      place.append(head, list);
    }
  };

  const bodyOf = (entry) => {
    const body = new URLSearchParams(entry.fields);
    // The page that is open now vouches for what was entered on an earlier one.
    const token = form.querySelector('input[name="__RequestVerificationToken"]');
    if (token) {
      body.set(token.name, token.value);
    }

    return body;
  };

  const show = async (response) => {
    const parsed = new DOMParser().parseFromString(await response.text(), "text/html");
    const main = parsed.querySelector("main");
    if (!main) {
      location.assign(response.url);
      return;
    }

    const place = new URL(response.url);
    history.replaceState(null, "", `${place.pathname}${place.search}`);
    document.querySelector("main").replaceWith(main);
    window.scrollTo(0, 0);
    bind(main);
    (main.querySelector("#again") ?? main.querySelector('[aria-invalid="true"]'))?.focus();
  };

  // What was asked back is sent again only when the page is opened anew, or when it is said again.
  const next = (all) => read(key).find((entry) => all || !entry.isAsked);

  const flush = async (all = false) => {
    if (isSending || !document.contains(form)) {
      return;
    }

    isSending = true;
    let shown = null;
    try {
      for (let entry = next(all); entry; entry = next(all)) {
        const sent = entry;
        const response = await fetch(location.pathname, { method: "POST", body: bodyOf(sent), credentials: "same-origin" });
        if (response.status >= 500 || response.status === 400) {
          tell("The program does not answer as it should");
          return;
        }

        // It was taken, or it is asked back: on the page that came, with all that was typed. Until it is said again it stays here too.
        shown = response;
        if (!response.redirected || !new URL(response.url).searchParams.has("entered")) {
          write(key, read(key).map((other) => (other.id === sent.id ? { ...other, isAsked: true } : other)));
          break;
        }

        write(key, read(key).filter((other) => other.id !== sent.id));
      }
    } catch {
      tell("No connection");
      return;
    } finally {
      isSending = false;
    }

    if (shown) {
      await show(shown);
    } else {
      tell();
    }
  };

  const clear = () => {
    form.querySelector('input[name="id"]').value = newId();
    form.querySelectorAll('input[type="radio"]').forEach((radio) => {
      radio.checked = (radio.name === "look" && radio.value === "") || (radio.name === "sex" && radio.value === "u");
    });
    form.querySelectorAll("#other, #mass, #tag, #notes").forEach((field) => {
      field.value = "";
    });
    form.querySelectorAll('input[type="checkbox"]').forEach((box) => {
      box.checked = false;
    });
    form.querySelector("#again")?.remove();
  };

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const entry = { id: newId(), fields: [...new FormData(form).entries()].filter(([name, value]) => typeof value === "string" && name !== "__RequestVerificationToken") };
    write(key, [...read(key).filter((other) => hatchlingOf(other) !== hatchlingOf(entry)), entry]);
    clear();
    tell("Being sent");
    flush();
  });

  // A look that only one sex can have says the sex.
  form.querySelectorAll("input[data-sex]").forEach((look) => {
    look.addEventListener("change", () => {
      const sex = look.dataset.sex && form.querySelector(`input[name="sex"][value="${look.dataset.sex}"]`);
      if (sex) {
        sex.checked = true;
      }
    });
  });

  // What is asked on the page is not taken away under the keeper's thumb.
  const isAsking = () => document.querySelector("#again") || form.querySelector('[aria-invalid="true"]');
  const goOn = (all) => !isAsking() && next(all) && flush(all);
  window.addEventListener("online", () => goOn(false));
  const again = setInterval(() => (document.contains(form) ? goOn(false) : clearInterval(again)), pause);
  tell();
  goOn(true);
}
