// Search as you type for trade text: the combobox pattern of the ARIA Authoring Practices with a list box below.
const pauseMilliseconds = 90;
let lists = 0;

export function offerCompletions(box) {
  const input = box.querySelector("input");
  const list = document.createElement("ul");
  list.id = `completions-${++lists}`;
  list.setAttribute("role", "listbox");
  list.setAttribute("aria-label", "Ways to go on");
  list.hidden = true;
  box.append(list);
  input.setAttribute("role", "combobox");
  input.setAttribute("aria-autocomplete", "list");
  input.setAttribute("aria-expanded", "false");
  input.setAttribute("aria-controls", list.id);

  let completions = [];
  let active = -1;
  let timer = 0;
  let asked = 0;
  let request = null;

  function close() {
    clearTimeout(timer);
    asked++;
    request?.abort();
    list.hidden = true;
    list.replaceChildren();
    completions = [];
    active = -1;
    input.setAttribute("aria-expanded", "false");
    input.removeAttribute("aria-activedescendant");
  }

  function point(index) {
    active = index;
    [...list.children].forEach((option, i) => option.setAttribute("aria-selected", String(i === index)));
    if (index < 0) {
      input.removeAttribute("aria-activedescendant");
      return;
    }

    input.setAttribute("aria-activedescendant", list.children[index].id);
    list.children[index].scrollIntoView({ block: "nearest" });
  }

  function show(found) {
    completions = found;
    if (found.length === 0) {
      close();
      return;
    }

    list.replaceChildren(...found.map((completion, i) => {
      const option = document.createElement("li");
      option.id = `${list.id}-${i}`;
      option.setAttribute("role", "option");
      option.append(completion.text);
      if (completion.hint) {
        const hint = document.createElement("span");
        hint.textContent = completion.hint;
        option.append(" ", hint);
      }

      // Pressing must not take the focus out of the text.
      option.addEventListener("pointerdown", (event) => event.preventDefault());
      option.addEventListener("click", () => take(i));
      return option;
    }));
    list.hidden = false;
    input.setAttribute("aria-expanded", "true");
    point(-1);
  }

  function take(index) {
    const { text, from, length } = completions[index];
    const rest = input.value.slice(from + length);
    const gap = rest === "" ? " " : "";
    input.value = input.value.slice(0, from) + text + gap + rest;
    const caret = from + text.length + gap.length;
    input.setSelectionRange(caret, caret);
    close();
    input.dispatchEvent(new Event("change", { bubbles: true }));
  }

  // A word that is written out needs no list in the way of what stands below; the arrow keys still open it.
  function isWritten({ text, from, length }) {
    return text.toLowerCase() === input.value.slice(from, from + length).toLowerCase();
  }

  async function ask(byKey) {
    const turn = ++asked;
    request?.abort();
    request = new AbortController();
    const query = new URLSearchParams({ text: input.value, caret: String(input.selectionStart ?? input.value.length) });
    try {
      const response = await fetch(`/complete?${query}`, { signal: request.signal });
      const found = response.ok ? await response.json() : [];
      if (turn === asked && document.activeElement === input) {
        show(byKey || !found.some(isWritten) ? found : []);
      }
    } catch {
      // Without a connection it is a plain text box.
    }
  }

  input.addEventListener("input", () => {
    clearTimeout(timer);
    if (input.value.trim() === "") {
      close();
      return;
    }

    timer = setTimeout(() => ask(false), pauseMilliseconds);
  });

  input.addEventListener("keydown", (event) => {
    if (event.isComposing) {
      return;
    }

    if (event.key === "ArrowDown" || event.key === "ArrowUp") {
      event.preventDefault();
      if (list.hidden) {
        ask(true);
        return;
      }

      // One place of the round is the text itself.
      const places = completions.length + 1;
      const step = event.key === "ArrowDown" ? 1 : places - 1;
      point(((active + 1 + step) % places) - 1);
    } else if (event.key === "Enter" && !list.hidden && active >= 0) {
      event.preventDefault();
      take(active);
    } else if (event.key === "Escape" && !list.hidden) {
      event.preventDefault();
      close();
    }
  });

  input.addEventListener("blur", close);
}
