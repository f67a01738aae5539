"""Large text and narrow screens: nothing is cut off, and no page has to be moved sideways.

WCAG 2.2: resize text (1.4.4) at 200 %, reflow (1.4.10) at 320 pixels, which is a screen of 1280
at 400 %.
"""

# Width of the screen and size of the text, against the usual one.
SIZES = [(320, "100%"), (390, "200%"), (1280, "200%")]
SIDEWAYS = """() => {
  const page = document.scrollingElement;
  if (page.scrollWidth <= page.clientWidth + 1) return [];
  const wide = [...document.querySelectorAll('body *')].filter((one) =>
    !one.closest('.wide') && one.getBoundingClientRect().right > page.clientWidth + 1);
  return [`${page.scrollWidth} of ${page.clientWidth}`,
    ...wide.slice(-3).map((one) => one.outerHTML.slice(0, 90))];
}"""
# Controls whose words do not fit into them, or that stick out of the page.
CUT_OFF = """() => [...document.querySelectorAll(
  'button, .button, summary, select, input:not([type=hidden]), label, legend')]
  .filter((one) => one.checkVisibility({ visibilityProperty: true }))
  .filter((one) => !one.closest('.visually-hidden'))
  .filter((one) => {
    const box = one.getBoundingClientRect();
    const held = one.closest('.wide, .days, .week-side');
    const out = !held && box.right > document.scrollingElement.clientWidth + 1;
    const words = !one.matches('input, select, label')
      && (one.scrollWidth > one.clientWidth + 1 || one.scrollHeight > one.clientHeight + 2)
      && one.clientWidth > 0;
    return out || words;
  }).map((one) => one.outerHTML.slice(0, 110))"""


def test_nothing_is_cut_off_and_nothing_scrolls_sideways(every_page) -> None:
    wrong = []
    for place, page in every_page(viewport={"width": SIZES[0][0], "height": 844}):
        for width, text in SIZES:
            page.set_viewport_size({"width": width, "height": 844})
            page.evaluate(f"document.documentElement.style.setProperty('font-size', '{text}')")
            found = [*page.evaluate(SIDEWAYS), *page.evaluate(CUT_OFF)]
            wrong += [f"{place.name} at {width}, {text}: {one}" for one in found]
    assert not wrong, "\n".join(wrong)
