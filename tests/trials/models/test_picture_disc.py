"""The picture disc."""

import pytest

from packgen.trials.models.picture_disc import pictures_a_second, turns_for
from packgen.trials.plan import plan_trial
from packgen.units import quantity


def test_twelve_slots_at_sixty_turns_a_minute():
    # Kinematics of the slotted drum: 12 slots at 60 rpm pass 12 pictures a second.
    assert pictures_a_second(12, 1.0) == 12


def test_motion_needs_ten_pictures_a_second():
    # About 10 pictures a second (Real-time 3D Character Animation, ch. 8): 12 pictures need 50 turns a minute.
    assert 60 * turns_for(12, 10) == pytest.approx(50)


def test_film_speed_from_a_twelve_picture_drum():
    # Film runs at 24 pictures a second (same chapter): two turns a second of 12 slots.
    assert turns_for(12, 24) == 2


def test_fewer_pictures_must_spin_faster():
    plan = plan_trial("picture-disc", {}, ("pictures", [quantity(6), quantity(12)]))
    values = [row.expected.value for row in plan.rows if row.expected]
    assert values == pytest.approx([10 * 10 / 6, 10 * 10 / 12])
