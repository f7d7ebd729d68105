-- Every screen asks which lots are held back and which jobs got them. An older version of the
-- program does not know these movements: from here on it refuses the database.

CREATE INDEX movement_that_holds_back ON movement (position) WHERE kind IN ('HOLD_BACK', 'CLEAR');

CREATE INDEX movement_by_lot ON movement (lot, position);
