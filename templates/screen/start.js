document.documentElement.classList.add("live");

// One file, two views: the fragment says which.
// The operator's board waits for the fonts inside the page: a browser keeps what it drew without them.
const fontsLoaded = Promise.allSettled([...document.fonts].map((font) => font.load()));
if (new URLSearchParams(location.hash.slice(1)).get("view") === "operator") fontsLoaded.then(() => new Operator().begin());
else new Reader().begin();
