// Laid into the page before anything of it runs: notes when things happen, in milliseconds since the page was asked for.
(() => {
    const pace = window.pace = {usable: null, presses: [], events: [], kept: []};
    // The next frame is painted once the message behind it arrives: its task comes after the frame's own work.
    const painted = done => requestAnimationFrame(() => {
        const channel = new MessageChannel();
        channel.port1.onmessage = () => done(performance.now());
        channel.port2.postMessage(0);
    });
    const element = node => node.nodeType === Node.ELEMENT_NODE ? node : node.parentElement;
    let pressed = null;
    addEventListener('keydown', event => { pressed = event.timeStamp; }, true);
    new MutationObserver(changes => {
        if (pace.usable === null && document.querySelector('#look-around, #pieces button')) {
            pace.usable = 0;
            painted(now => { pace.usable = now; });
        }
        const since = pressed;
        if (since !== null && changes.some(change => element(change.target)?.closest('#painted-area'))) {
            pressed = null;
            painted(now => pace.presses.push(now - since));
        }
        for (const change of changes) {
            if (change.attributeName === 'data-state' && change.target.id === 'keeping') {
                pace.kept.push([change.target.dataset.state, performance.now()]);
            }
        }
    }).observe(document, {childList: true, characterData: true, subtree: true, attributes: true, attributeFilter: ['data-state']});
    const seen = list => {
        for (const entry of list.getEntries()) {
            if (entry.interactionId) pace.events.push([entry.interactionId, entry.name, entry.duration]);
        }
    };
    for (const type of ['event', 'first-input']) {
        new PerformanceObserver(seen).observe({type, durationThreshold: 16, buffered: true});
    }
})();
