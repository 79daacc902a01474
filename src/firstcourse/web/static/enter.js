// The code stands behind the # of the address, which no server and no log ever sees.
const code = decodeURIComponent(location.hash.slice(1));
const form = /** @type {HTMLFormElement} */ (document.getElementById("enter"));
const field = /** @type {HTMLInputElement} */ (document.getElementById("code"));
if (code) {
  history.replaceState(null, "", location.pathname);
  field.value = code;
  form.submit();
}
