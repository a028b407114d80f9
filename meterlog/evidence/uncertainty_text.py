"""UncertaintyText: how uncertainties are made, in words; the same wherever evidence says it.

Source
------
JCGM 100:2008 (4.2.3, 4.3.7, 5.1.2, 5.2.2, G.4.1); EA-4/02 M:2022, S9 and S10.
"""

from __future__ import annotations

UNCERTAINTY = (
    "JCGM 100:2008: the meter's and the sensor's stated accuracy, the temperature where it was"
    " recorded and the zero's drift count as rectangles (4.3.7); of one statement a = percent +"
    " digits the line of the digits holds what makes both lines the whole a / sqrt(3), which is"
    " sqrt(a^2 - percent^2) / sqrt(3); the scatter of the readings by the"
    " effective number of them where neighbours are alike (4.2.3), the zero by its own scatter;"
    " combined by 5.1.2 and 5.2.2, what one meter reads twice taken as one error. The coverage"
    " factor is for about 95 %: by the effective degrees of freedom (G.4.1), 1.65 to 1.90 where one"
    " or two rectangles are nearly all of it (EA-4/02 M:2022, S9 and S10)."
)
