// What was typed outlives a dropped connection: it stays in this tab until a page of ours has taken it.
const prefix = "clutchwright:";
const sentKey = `${prefix}sent`;

function keyOf(form) {
  return `${prefix}${location.pathname}:${form.dataset.keep}`;
}

function fieldsOf(form) {
  return [...form.elements].filter((field) => field.name && (field.type !== "hidden" || field.name === "version") && field.type !== "file" && field.tagName !== "BUTTON");
}

// Where rows come and go, a field is known by its name and not by its place.
function isByName(form) {
  return form.dataset.keepBy === "name";
}

function read(form) {
  if (isByName(form)) {
    return Object.fromEntries(fieldsOf(form).filter((field) => field.type !== "radio" || field.checked).map((field) => [field.name, field.value]));
  }

  return fieldsOf(form).map((field) => ((field.type === "radio" || field.type === "checkbox") ? field.checked : field.value));
}

function write(form, values) {
  if (isByName(form)) {
    fieldsOf(form).filter((field) => field.name in values).forEach((field) => {
      if (field.type === "radio") {
        field.checked = field.value === values[field.name];
      } else {
        field.value = values[field.name];
      }
    });
    return;
  }

  fieldsOf(form).forEach((field, i) => {
    if (field.type === "radio" || field.type === "checkbox") {
      field.checked = values[i] === true;
    } else {
      field.value = values[i] ?? "";
    }
  });
}

function say(form, words, forget) {
  const note = document.createElement("div");
  note.className = "kept";
  note.setAttribute("role", "status");
  note.textContent = `${words} `;
  if (forget) {
    const button = document.createElement("button");
    button.type = "button";
    button.className = "quiet";
    button.textContent = "Put it back as it was";
    button.addEventListener("click", () => {
      forget();
      note.remove();
    });
    note.append(button);
  }

  form.querySelector(".kept")?.remove();
  form.prepend(note);
}

function isOffline() {
  return !navigator.onLine && !["localhost", "127.0.0.1", "[::1]"].includes(location.hostname);
}

export function keepWhatWasTyped(forms) {
  // A deed of one press has nothing to keep; it stays on its page, so that it can be pressed again.
  document.addEventListener("submit", (event) => {
    if (event.target.method === "post" && !event.target.dataset.keep && isOffline()) {
      event.preventDefault();
      say(event.target, "No connection. Nothing was written; press again when you are back.");
    }
  });

  const here = new Set([...forms].map(keyOf));

  // We came to another page after sending, so the book has it.
  const sent = sessionStorage.getItem(sentKey);
  if (sent && !here.has(sent)) {
    sessionStorage.removeItem(sent);
  }

  sessionStorage.removeItem(sentKey);

  forms.forEach((form) => {
    const key = keyOf(form);
    const given = read(form);
    const kept = sessionStorage.getItem(key);
    if (kept && sent === key && !form.querySelector('.problem, [aria-invalid="true"]')) {
      // The same page again and nothing wrong with it: it was taken.
      sessionStorage.removeItem(key);
    } else if (kept && kept !== JSON.stringify(given)) {
      write(form, JSON.parse(kept));
      form.closest("details")?.setAttribute("open", "");
      say(form, "What you typed here before was not sent; it is back.", () => {
        write(form, given);
        sessionStorage.removeItem(key);
      });
    }

    const keep = () => sessionStorage.setItem(key, JSON.stringify(read(form)));
    form.addEventListener("input", keep);
    form.addEventListener("change", keep);
    form.addEventListener("submit", (event) => {
      keep();
      if (isOffline()) {
        event.preventDefault();
        say(form, "No connection. What you typed is kept here; send it again when you are back.");
        return;
      }

      sessionStorage.setItem(sentKey, key);
    });
  });
}
