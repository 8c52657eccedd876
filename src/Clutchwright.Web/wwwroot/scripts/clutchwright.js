// Everything here is on top: without it every page, link and form still works.
import { offerCompletions } from "./combobox.js";
import { keepWhatWasTyped } from "./keep.js";
import { queueWhatIsEntered } from "./queue.js";
import { waitForWork } from "./work.js";

document.querySelectorAll("[data-combo]").forEach(offerCompletions);
document.querySelectorAll("[data-work]").forEach(waitForWork);
keepWhatWasTyped(document.querySelectorAll("form[data-keep]"));

// A page that is exchanged for the next one is made to work again.
function bindQueue(within) {
  within.querySelectorAll("form[data-queue]").forEach((form) => queueWhatIsEntered(form, (main) => {
    main.querySelectorAll("[data-combo]").forEach(offerCompletions);
    bindQueue(main);
  }));
}

bindQueue(document);

// A page that takes its time says so, and a second press does not send a second time.
document.addEventListener("submit", (event) => {
  if (event.defaultPrevented) {
    return;
  }

  if (event.target.getAttribute("aria-busy") === "true") {
    event.preventDefault();
    return;
  }

  const form = event.target;
  form.setAttribute("aria-busy", "true");
  if (form.method !== "post") {
    return;
  }

  // A file that comes back leaves this page as it is: its answer takes the cookie away.
  document.cookie = "clutchwright-waiting=1; path=/; max-age=3600; samesite=strict";
  const waiting = setInterval(() => {
    if (!form.hasAttribute("aria-busy") || !document.cookie.includes("clutchwright-waiting")) {
      clearInterval(waiting);
      form.removeAttribute("aria-busy");
    }
  }, 300);
});

document.addEventListener("click", (event) => {
  const form = event.target.closest?.("[data-stop]")?.form;
  if (form) {
    window.stop();
    form.removeAttribute("aria-busy");
  }
});

// Coming back by the browser's own button brings back the page as it was left, busy forms too.
window.addEventListener("pageshow", () => {
  document.querySelectorAll("form[aria-busy]").forEach((form) => form.removeAttribute("aria-busy"));
});

// Empty gaps of a form that asks a question stay out of the address.
document.querySelectorAll('form[method="get"]').forEach((form) => {
  form.addEventListener("formdata", (event) => {
    for (const name of new Set(event.formData.keys())) {
      const filled = event.formData.getAll(name).filter((value) => typeof value !== "string" || value.trim() !== "");
      event.formData.delete(name);
      filled.forEach((value) => event.formData.append(name, value));
    }
  });
});

// Whoever picks a colour of their own means that one.
document.querySelectorAll("[data-own-tone]").forEach((picker) => {
  picker.addEventListener("input", () => {
    const own = picker.form.querySelector(`input[name="tone"][value="${picker.name}"]`);
    if (own) {
      own.checked = true;
    }
  });
});

// A drawing larger than its sheet opens at the animal asked about, or at the one in the uppermost row that is nearest to the middle.
document.querySelectorAll(".pedigree .sheet").forEach((sheet) => {
  const asked = sheet.querySelector(".asked")?.getBoundingClientRect();
  const frame = sheet.getBoundingClientRect();
  const symbols = [...sheet.querySelectorAll("svg a.who")].map((symbol) => symbol.getBoundingClientRect());
  const upper = Math.min(...symbols.map((symbol) => symbol.top));
  const off = (symbol) => symbol.left + symbol.width / 2 - frame.left - sheet.scrollWidth / 2;
  const first = symbols.filter((symbol) => symbol.top < upper + 12).sort((a, b) => Math.abs(off(a)) - Math.abs(off(b)))[0];
  const shown = asked ?? first ?? frame;
  sheet.scrollLeft = shown.left + shown.width / 2 - frame.left - frame.width / 2;
  sheet.scrollTop = asked ? asked.top + asked.height / 2 - frame.top - frame.height / 2 : 0;
});

// On paper there is nothing to open.
const opened = [];
window.addEventListener("beforeprint", () => {
  document.querySelectorAll("main details:not([open])").forEach((details) => {
    if (!details.querySelector("form")) {
      details.open = true;
      opened.push(details);
    }
  });
});
window.addEventListener("afterprint", () => {
  opened.splice(0).forEach((details) => {
    details.open = false;
  });
});
