// SPDX-License-Identifier: Apache-2.0
// A page that lies open says when something came in that it doesn't show. It stays as it is until somebody asks: who is
// reading isn't interrupted. A page that nobody sees doesn't listen: a browser opens few connections to one place.
"use strict";

(() => {
    const place = document.querySelector("[data-since]");
    let events = null;

    const tell = (event) => {
        place.querySelector("span").textContent = event.data;
        place.firstElementChild.hidden = false;
    };
    const listen = () => {
        events = new EventSource("/arrivals?" + new URLSearchParams(place.dataset));
        events.addEventListener("arrived", tell);
    };
    const listenWhileSeen = () => {
        if (document.hidden) {
            events?.close();
            events = null;
        } else if (events === null) {
            listen();
        }
    };

    document.addEventListener("visibilitychange", listenWhileSeen);
    listenWhileSeen();
})();
