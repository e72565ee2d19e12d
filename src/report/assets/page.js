"use strict";
// What every page has: contrast, size of text, print. The choices are kept for the next page.
const byId = (id) => document.getElementById(id);
const store = {
  get(key) { try { return localStorage.getItem(key); } catch { return null; } },
  set(key, value) { try { localStorage.setItem(key, value); } catch { /* a browser that keeps nothing */ } },
};
for (const name of ["contrast", "large"]) {
  const button = byId(name);
  const show = (on) => {
    document.documentElement.classList.toggle(name, on);
    button.setAttribute("aria-pressed", String(on));
  };
  show(store.get("squaredig " + name) === "on");
  button.addEventListener("click", () => {
    const on = button.getAttribute("aria-pressed") !== "true";
    show(on);
    store.set("squaredig " + name, on ? "on" : "off");
  });
}
byId("print").addEventListener("click", () => window.print());
// Folded parts are printed too.
let folded = [];
window.addEventListener("beforeprint", () => {
  folded = [...document.querySelectorAll("details:not([open])")];
  for (const part of folded) part.open = true;
});
window.addEventListener("afterprint", () => { for (const part of folded) part.open = false; });
