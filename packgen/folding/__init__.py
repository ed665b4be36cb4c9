"""Folding: small books as fold programs, and where each of their pages lies on the sheet. Pure geometry.

Call `plan_fold` for a book, `schemes` for what there is.
"""

from packgen.folding.figure_values import StepFigure
from packgen.folding.figures import step_figures
from packgen.folding.plan import plan_fold, scheme_named
from packgen.folding.program import FoldError, Program, Scheme
from packgen.folding.schemes import schemes
from packgen.folding.slots import Flip, FoldLine, FoldPlan, FoldSheet, Sides, Slot, natural_flip

__all__ = [
    "Flip",
    "FoldError",
    "FoldLine",
    "FoldPlan",
    "FoldSheet",
    "Program",
    "Scheme",
    "Sides",
    "Slot",
    "StepFigure",
    "natural_flip",
    "plan_fold",
    "scheme_named",
    "schemes",
    "step_figures",
]
