document.documentElement.classList.add("live");

// One file, two views: the fragment says which.
if (new URLSearchParams(location.hash.slice(1)).get("view") === "operator") new Operator().begin();
else new Reader().begin();
